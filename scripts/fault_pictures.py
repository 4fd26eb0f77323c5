"""Draw the pictures of the fault finder: on the left what is seen, on the right the same place cut through.

    python3 scripts/fault_pictures.py

Writes docs/assets/pictures/faults/*.svg, the same files each time.
"""

from __future__ import annotations

from pathlib import Path

import fault_drawings_colour
import fault_drawings_film
import fault_drawings_holes
import fault_drawings_loose
import fault_drawings_marks
import fault_drawings_rust
import fault_drawings_skin
from fault_drawing import DRAWINGS
from pictures_pen import picture

FOLDER = Path(__file__).resolve().parent.parent / "docs" / "assets" / "pictures" / "faults"
# each adds its drawings to the list when it is read
PARTS = (
    fault_drawings_holes,
    fault_drawings_skin,
    fault_drawings_film,
    fault_drawings_colour,
    fault_drawings_loose,
    fault_drawings_rust,
    fault_drawings_marks,
)


def main() -> None:
    FOLDER.mkdir(parents=True, exist_ok=True)
    for name, make in DRAWINGS.items():
        (FOLDER / f"{name}.svg").write_text(picture(f"faults/{name}", *make()), "utf-8")


if __name__ == "__main__":
    main()
