"""The joint plan of one placement: where joints go, and whether each panel keeps the rules.

Contraction joints are straight cuts that decide where a slab cracks. They divide it into panels,
and the trade's rules judge each panel: its longest side, long side over short, the sharpest corner,
the least width, and whether a corner or a curve of a cut-out has its joint. `plan` is the entrance;
it lays out joints unless the owner typed them, and `faults` says what is wrong with his. Everything
below serves `lay_out`.

**The search.** No rule says where a joint goes, so several layouts are made and the cheapest wins:

1. `main_directions` turns the slab so that its main sides lie level, and draws its curves with few
   sides. A slab is laid out the same however it lies on the plan.
2. `lay_out` starts from several sets of lines, each likely to suit some kind of slab:
   - around one pool, `ring_of_panels`: joints from the pool to the outer edge (`spokes`), straight
     or forked before a corner, and where the deck is wide a line round the pool. They bound a ring
     of panels, and the cheapest is found as a shortest path; on a slab that is its own mirror image
     around one half, which is then reflected. If it is clean nothing else is tried;
   - `grid`: lines straight across, through inside corners and square to cut-outs, then evenly;
   - the same with spacings for a narrow slab, so that its panels are not too long;
   - no lines at all, for a slab without a cut-out.
3. `cutting` cuts the slab along the lines into parts. A part (`part`) is a panel in the making: a
   ring of corners that knows which of its sides are joints.
4. `refine` divides each part that breaks a rule. `candidates` proposes chords; each is priced by
   the panels it leads to, and a little for anything unsightly: an end that meets no other joint, a
   long joint, a skew corner, panels of unequal size. The three best cuts are followed to the end
   until all panels pass; after 40 parts only the best cut is followed.
5. `judge` holds the numbers of the rules and is asked all along: does a part pass, is it a sliver,
   how many panels will it become?
6. The layout is priced: 40 for a panel that fails, 1 for each panel, 4 for a joint that dies into
   another or ends near a corner (`ends`), a little for length, and more if the slab is its own
   mirror image and the layout is not.
7. `mend` takes the joints of the best layout that still die: it draws each back so that it pulls
   the other along into a corner, leads it to where another ends, or turns it out to the edge, as
   long as the price falls.

A search ends early once a layout is clean. Slabs of more than 250 panels get a plain grid.
The result is deterministic: no clock, no chance. `./run bench joints` counts how many panels of 200
made-up decks keep every rule; compare its result before and after any change here.
"""
