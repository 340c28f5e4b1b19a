"""Logos: what can act or reach out never comes through, and the drawing does."""

import io
from pathlib import Path

import pytest
from PIL import Image, ImageFile
from PIL.PngImagePlugin import PngInfo

from quotegen.problem import Problem, Source
from quotegen.reading.images.logos import LARGEST_BYTES, LARGEST_SIDE_PX, Logo, shown_logo
from tests.messages.spoiled_files import huge_png

HEAD = '<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 20 10">'
PLAIN = f'{HEAD}<title>Mark</title><path d="M0 0h20v10z" fill="#123456"/></svg>'
XLINK = '<svg xmlns="http://www.w3.org/2000/svg" xmlns:xlink="http://www.w3.org/1999/xlink">'


def _read(folder: Path, data: str | bytes, name: str = "logo.svg") -> Logo | Problem:
    (folder / name).write_bytes(data.encode() if isinstance(data, str) else data)
    return shown_logo(folder, name, Source(file="company.yaml"))


def test_a_plain_drawing_comes_through(tmp_path: Path):
    """Shapes, their paint and the title are kept."""
    logo = _read(tmp_path, PLAIN)
    assert isinstance(logo, Logo)
    assert logo.kind == "image/svg+xml"
    assert b'd="M0 0h20v10z"' in logo.data
    assert b"<title>Mark</title>" in logo.data


def test_an_editor_s_own_memory_is_left_out(tmp_path: Path):
    """Comments, metadata of other namespaces and unknown attributes do not leave the machine."""
    noisy = (
        '<?xml version="1.0"?><!-- /home/someone/logo.svg -->'
        '<svg xmlns="http://www.w3.org/2000/svg" xmlns:ed="https://editor.example/ns" '
        'viewBox="0 0 20 10" ed:version="1.2"><ed:view x="3"/>'
        '<rect width="20" height="10" data-owner="someone" ed:label="a"/></svg>'
    )
    logo = _read(tmp_path, noisy)
    assert isinstance(logo, Logo)
    for trace in (b"someone", b"editor.example", b"<!--", b"version"):
        assert trace not in logo.data


def test_a_size_in_pixels_stands_for_a_view_box(tmp_path: Path):
    """A drawing that says only its size can still be scaled."""
    logo = _read(tmp_path, PLAIN.replace('viewBox="0 0 20 10"', 'width="20" height="10px"'))
    assert isinstance(logo, Logo)
    assert b'viewBox="0 0 20 10"' in logo.data


@pytest.mark.parametrize(
    "bad",
    [
        f"{HEAD}<script>alert(1)</script></svg>",
        f"{HEAD}<a href='#x'><rect/></a></svg>",
        f'{HEAD}<rect onload="alert(1)"/></svg>',
        f'{HEAD}<rect OnClick="alert(1)"/></svg>',
        f"{HEAD}<foreignObject><p>a</p></foreignObject></svg>",
        f'{HEAD}<image href="https://pictures.example/a.png"/></svg>',
        f'{HEAD}<use href="https://pictures.example/a.svg#a"/></svg>',
        f'{XLINK}<g viewBox="0"/><use xlink:href="file:///etc/hostname#a"/></svg>',
        f'{HEAD}<rect fill="url(https://pictures.example/a.svg#p)"/></svg>',
        f"{HEAD}<rect style=\"fill: url( '//pictures.example/a')\"/></svg>",
        f"{HEAD}<style>@import 'https://styles.example/a.css';</style></svg>",
        f"{HEAD}<style>@font-face {{ src: url(a.woff) }}</style></svg>",
        f"{HEAD}<style>rect {{ fill: u\\72l(https://a.example) }}</style></svg>",
        f'{HEAD}<animate attributeName="href" values="javascript:alert(1)"/></svg>',
        f"{HEAD}<filter><feImage href='https://a.example'/></filter></svg>",
        f"{HEAD}<text>Pennywort</text></svg>",
        f'<!DOCTYPE svg [<!ENTITY a "b">]>{HEAD}&a;</svg>',
        f"{HEAD}<style>.a {{ clip-path: url(#b) }}</style></svg>",
        f'{HEAD}<g id="a"><use href="#a"/></g></svg>',
        f'{HEAD}<clipPath id="c" clip-path="url(#c)"><rect/></clipPath></svg>',
        f"{HEAD}<linearGradient id='a' href='#b'/><linearGradient id='b' href='#a'/></svg>",
        "<svg><rect/></svg>",
        '<html xmlns="http://www.w3.org/1999/xhtml"/>',
        '<svg xmlns="http://www.w3.org/2000/svg" width="100%" height="4cm"><rect/></svg>',
    ],
)
def test_what_could_act_or_reach_out_is_refused(tmp_path: Path, bad: str):
    """A script, a handler, a link or address outside, a font, a foreign document: none is shown."""
    problem = _read(tmp_path, bad)
    assert isinstance(problem, Problem)
    assert problem.code == "logo-acts"
    assert "`logo.svg`" in problem.message


@pytest.mark.parametrize("bad", [b"", b"\x89PNG\r\n", b"<svg", b"GIF89a", b"\xff\xd8\xff\xe0"])
def test_what_is_no_picture_is_refused(tmp_path: Path, bad: bytes):
    """A broken file, or one of another kind, is said to be so."""
    problem = _read(tmp_path, bad)
    assert isinstance(problem, Problem)
    assert problem.code == "not-a-logo"


def test_a_huge_file_is_refused(tmp_path: Path):
    """A logo is embedded in every page, so its size is limited."""
    problem = _read(tmp_path, PLAIN.replace("Mark", "m" * LARGEST_BYTES))
    assert isinstance(problem, Problem)
    assert problem.code == "logo-too-large"


def test_a_png_is_made_small_and_bare(tmp_path: Path):
    """Of a PNG only the pixels are kept, none of its texts, and no side over the limit."""
    told, out = PngInfo(), io.BytesIO()
    told.add_text("Author", "someone at home")
    Image.new("RGBA", (1200, 300), (10, 60, 90, 128)).save(out, "PNG", pnginfo=told)
    logo = _read(tmp_path, out.getvalue(), "logo.png")
    assert isinstance(logo, Logo)
    assert b"someone" not in logo.data
    with Image.open(io.BytesIO(logo.data)) as shown:
        assert shown.size == (LARGEST_SIDE_PX, LARGEST_SIDE_PX // 4)
        assert shown.getpixel((5, 5)) == pytest.approx((10, 60, 90, 128), abs=1)


@pytest.mark.parametrize("names", ["url(#a)", "url('#a')", 'url( "#a" )', "url( #a)"])
def test_a_paint_of_its_own_is_kept(tmp_path: Path, names: str):
    """The forms of url() in CSS Values and Units, 4.5, may name a gradient of the drawing."""
    typed = names.replace('"', "&quot;")
    logo = _read(tmp_path, f'{HEAD}<linearGradient id="a"/><rect fill="{typed}"/></svg>')
    assert isinstance(logo, Logo)


def test_parts_that_draw_parts_are_counted(tmp_path: Path):
    """Ten uses of ten uses of ten and so on, 10,000 parts in 800 letters, would print for hours."""
    levels = "".join(f'<g id="a{n}">{f"""<use href="#a{n - 1}"/>""" * 10}</g>' for n in range(1, 5))
    drawing = f'{HEAD}<g id="a0"><rect/></g>{levels}</svg>'
    problem = _read(tmp_path, drawing)
    assert isinstance(problem, Problem)
    assert problem.code == "logo-acts"
    assert isinstance(_read(tmp_path, drawing.replace('id="a2"', 'id="b2"')), Logo)


def test_a_png_of_too_many_pixels_is_refused_unread(tmp_path: Path):
    """A picture of 9,400 x 9,400 in a small file is refused by its head."""
    problem = _read(tmp_path, huge_png(9_400, 9_400), "logo.png")
    assert isinstance(problem, Problem)
    assert "9400 by 9400 pixels" in problem.message


def test_half_a_png_is_refused_once_the_print_engine_is_loaded(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
):
    """The engine makes Pillow accept half a picture; `check` and `package` must say the same."""
    monkeypatch.setattr(ImageFile, "LOAD_TRUNCATED_IMAGES", True)
    out = io.BytesIO()
    Image.effect_noise((64, 64), 90).save(out, "PNG")
    problem = _read(tmp_path, out.getvalue()[:1_500], "logo.png")
    assert isinstance(problem, Problem)
    assert problem.code == "not-a-logo"
