// Shows what a choice leads to. Every figure was worked out beforehand; this only looks it up.
(() => {
  const data = JSON.parse(document.getElementById("combinations").textContent);
  const place = Object.fromEntries(data.names.map((name, index) => [name, index]));
  const all = (query, from = document) => [...from.querySelectorAll(query)];
  const groups = all("[data-group]").map((group) => all("input", group));
  const boxes = all("[data-extras] input");
  const colors = groups.find((group) => group[0].name === "color") || [];
  // A row of another choice is a copy of the quoted one, without the page of the guide in it.
  const plain = (row) => {
    const copy = row.cloneNode(true);
    copy.removeAttribute("class");
    all("details", copy).forEach((folded) => folded.replaceWith(folded.querySelector("summary").textContent));
    return copy;
  };
  const lists = all("[data-rows]").map((list) => ({ list, quoted: [...list.children], plain: [], shown: -1 }));
  const quoted = Object.keys(data.combinations)[0];
  const letter = document.getElementById("ask-letter");
  let now = quoted;

  const text = (key, name) => data.text[data.combinations[key][place[name]]];
  const picked = (group) => (group.find((input) => input.checked) || { value: "" }).value;
  const keyWith = (changed, value) =>
    [...groups.map((group) => (group === changed ? value : picked(group))),
      boxes.filter((box) => box.checked).map((box) => box.value).join("+")].join(",");

  // A finish may not take the colors that are picked: then it comes in the first that it takes.
  const keyThatGoesWith = (changed, value) => {
    const key = keyWith(changed, value);
    if (key in data.combinations || !colors.length) return key;
    const parts = key.split(",");
    return [...colors.map((input) => input.value), ""]
      .map((look) => parts.map((part, index) => (groups[index] === colors ? look : part)).join(","))
      .find((other) => other in data.combinations);
  };

  const write = (element, said) => {
    if (element.textContent !== said) element.textContent = said;
  };

  const cells = (row) => (row.children.length ? [...row.children] : [row]);
  const fillRows = (one, rows, isQuote) => {
    if (one.shown === rows) return;
    one.shown = rows;
    if (isQuote) return one.list.replaceChildren(...one.quoted);
    one.list.replaceChildren(...data.lists[rows].map((row, number) => {
      const at = Math.min(number, one.quoted.length - 1);
      const copy = (one.plain[at] ||= plain(one.quoted[at])).cloneNode(true);
      data.rows[row].forEach((cell, index) => {
        const place = cells(copy)[index];
        if (place.dataset.said === undefined) place.textContent = data.text[cell];
        else place.dataset.said = data.text[cell];
      });
      return copy;
    }));
  };

  const show = (key) => {
    now = key;
    const parts = key.split(",");
    const added = parts[groups.length].split("+");
    groups.forEach((group, index) =>
      group.forEach((input) => { input.checked = input.value === parts[index]; }));
    boxes.forEach((box) => { box.checked = added.includes(box.value); });
    groups.forEach((group) => group.forEach((input) => {
      const other = (group === colors ? keyWith : keyThatGoesWith)(group, input.value);
      input.disabled = !(other in data.combinations);
      write(input.closest("label").querySelector("[data-amount]"),
        input.disabled ? input.closest("[data-none]").dataset.none : text(other, "total"));
    }));
    all("[data-slot]").forEach((element) => write(element, text(key, element.dataset.slot)));
    lists.forEach((one) => fillRows(one, data.combinations[key][place[one.list.dataset.rows]], key === quoted));
    all("[data-differs]").forEach((part) => part.toggleAttribute("hidden", key === quoted));
    all("[data-quoted]").forEach((part) => part.toggleAttribute("hidden", key !== quoted));
    all("[data-tick]").forEach((place) => {
      place.classList.toggle(place.dataset.mark, place.dataset.tick === parts[0]);
    });
    const body = encodeURIComponent(letter.textContent.replaceAll("\xa0", " ").replaceAll("\n", "\r\n"));
    const subject = encodeURIComponent(text(key, "ask_subject").replaceAll("\xa0", " "));
    all("[data-ask]").forEach((link) => {
      link.href = link.href.replace(/subject=.*/, `subject=${subject}&body=${body}`);
    });
  };

  // The choice stands in the address, behind the name of a sheet where there is one.
  const asked = () => location.hash.match(/^#([\w-]*?)&?(?:choose=(.*))?$/) || [];
  const readable = (key) => {
    try { return decodeURIComponent(key); } catch { return ""; }
  };
  const remember = () => {
    const sheet = asked()[1] || "";
    const choice = now === quoted ? "" : `${sheet && "&"}choose=${now}`;
    const hash = sheet + choice;
    history.replaceState(null, "", hash ? `#${hash}` : location.pathname + location.search);
  };
  const restore = () => {
    const [, sheet, typed] = asked();
    const key = readable(typed || "");
    if (key in data.combinations) {
      show(key);
      if (sheet) document.getElementById(sheet)?.scrollIntoView();
    } else {
      remember();
    }
  };

  document.documentElement.classList.add("live");
  document.getElementById("choose").addEventListener("change", ({ target }) => {
    const group = groups.find((inputs) => inputs.includes(target));
    show(group ? keyThatGoesWith(group, target.value) : keyWith());
    remember();
  });
  addEventListener("hashchange", restore);
  addEventListener("beforeprint", () => all("details").forEach((part) => { part.open = true; }));
  show(quoted);
  restore();
})();
