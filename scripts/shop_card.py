"""The shop card: the numbers that people look up most, worked out by the calculators when the site is built.

Each row leads to its calculator with the row's values in it. Nothing on the page needs a script.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable
from html import escape
from math import ceil

from worked import answers, filled_in

from calculators.cure._schedule import DEFAULT_HIGH, DEFAULT_KJ_MOL, DEFAULT_LOW
from calculators.cure._window import whole_up
from calculators.physics.cure import Kinetics, minutes_needed
from calculators.tables import table

Row = tuple[str, str, tuple[str, ...]]  # what the row is for, where it leads, its numbers

# Each picture of paper: what the print rules call it, and how it is offered.
PAPERS = {"wall": "A whole sheet, for the wall", "half": "Half a sheet, for the clipboard"}
# Over 50 to 95 F and 30 to 90 % our dew point lies up to 0.06 F under the ASHRAE formulas' (psychrolib): on the wall it is
# rounded up to a whole degree, and never to one below theirs.
DEW_SHORT_F = 0.1
# The grade and, where the calculator asks for it by itself, the place that leads there.
GRADES = {"sp5": "", "sp10": "outdoors", "sp6": "indoors", "sp14": "", "sp7": "", "sp1": ""}


def shop_card_html() -> str:
    """The card, and the choice of its size on paper."""
    sizes = "".join(_size(size, words) for size, words in PAPERS.items())
    cards = "".join(card() for card in CARDS)
    return (
        f'<div class="shop-card">{cards}</div>'
        f'<fieldset class="card-paper"><legend>When you print</legend>{sizes}</fieldset>'
    )


def _size(size: str, words: str) -> str:
    checked = " checked" if size == "wall" else ""
    return (
        f'<label><input type="radio" name="card-paper" value="{size}"{checked}> <span>{words}</span></label>'
    )


def _card(key: str, title: str, head: Iterable[str], rows: Iterable[Row], foot: str) -> str:
    cells = "".join(f'<th scope="col">{escape(words)}</th>' for words in head)
    lines = "".join(
        f'<tr><th scope="row"><a href="{link}">{escape(name)}</a></th>'
        f"{''.join(f'<td>{escape(number)}</td>' for number in numbers)}</tr>"
        for name, link, numbers in rows
    )
    return (
        f'<section id="card-{key}"><h2>{escape(title)}</h2><table class="card-table"><thead><tr>{cells}</tr></thead>'
        f"<tbody>{lines}</tbody></table><p>{escape(foot)}</p></section>"
    )


def _short(text: str) -> str:
    """An answer without what its column already says: the part before the bracket, without `about`."""
    return text.split(" (")[0]


def coverage() -> str:
    rows = []
    for film in ("2", "2.5", "3", "3.5", "4"):
        asked = {"film": f"{film} mil", "specific-gravity": "1.5", "transfer": "60 %"}
        found = answers("coverage", asked)
        rows.append(
            (f"{film} mil", filled_in("coverage", asked), (found["coverage"].text, found["no-loss"].text))
        )
    foot = "Specific gravity 1.5. Take the data sheet's, and weigh what sticks in your booth."
    return _card("coverage", "A pound of powder covers", ("Film", "60 % sticks", "Nothing lost"), rows, foot)


def film() -> str:
    rule = table("film_rules")["pa2-level-3"]
    rows = []
    for low, high in ((2.0, 4.0), (2.5, 3.5), (3.0, 5.0)):
        asked = {"low": f"{low:g} mil", "high": f"{high:g} mil"}
        raw = _short(answers("comb-to-cured", asked)["teeth-to-aim-for"].text).removesuffix(" mil")
        rows.append(
            (
                f"{low:g} to {high:g}",
                filled_in("film-readings", {**asked, "rule": "pa2-level-3"}),
                (
                    f"{low * 25.4:.0f} to {high * 25.4:.0f}",
                    f"{low * rule['spot_low']:g} to {high * rule['spot_high']:g}",
                    raw,
                ),
            )
        )
    foot = (
        "A smooth coat is mostly 2 to 4 mil; the data sheet rules. A spot, by SSPC-PA 2 level 3, is the mean of 3 readings. "
        "Raw taken as twice the cured film: prove your own."
    )
    return _card("film", "Film, cured", ("Agreed, mil", "µm", "One spot, mil", "Raw comb, mil"), rows, foot)


def blast_air() -> str:
    rows = []
    for number, row in table("nozzles").items():
        asked = {"nozzle": number, "pressure": "100 psi", "helmet-air": "0 cfm"}
        low = answers("blast-plan", {**asked, "pressure": "80 psi"})["air-demand"].text
        cfm, _, metric = answers("blast-plan", asked)["air-demand"].text.partition(" (")
        rows.append(
            (row["name"], filled_in("blast-plan", asked), (_short(low), cfm, metric.split(" m3/min")[0]))
        )
    foot = "Pressure-fed, abrasive flowing, new nozzle. Add the hood's air, and half again for wear."
    return _card("air", "Blast air by nozzle", ("Nozzle", "80 psi", "100 psi", "m³/min"), rows, foot)


def grades() -> str:
    read = table("surface_grades")
    rows = []
    for key, service in GRADES.items():
        row = read[key]
        words, share = row["may_remain"].rstrip(".").split(":")[0], row.get("remains_percent")
        if share:
            in_place = words.replace("up to the share", f"up to {share} %")
            words = in_place if in_place != words else f"{words}, {share} % at most"
        us = row["name"].removeprefix("SSPC-").split(" / ")[0].split(" solvent")[0]
        link = (
            filled_in("blast-or-not", {"metal": "carbon-steel", "service": service})
            if service
            else "~/prepare/surface-grades/"
        )
        rows.append((us, link, (row["iso_grade"].split(";")[0], words)))
    foot = "Near each other, never equal. Share of each small area. Outdoors: SP 10. Indoors and dry: SP 6."
    return _card("grades", "Blast grades", ("US", "ISO", "May remain"), rows, foot)


def cure() -> str:
    rows = []
    for degF in (400, 390, 380, 375, 360):
        # the next whole minute, so that no rounding cuts a time to hold
        best, low, high = (
            whole_up(minutes_needed(Kinetics((400 - 32) / 1.8, energy), 10, (degF - 32) / 1.8))
            for energy in (DEFAULT_KJ_MOL, DEFAULT_LOW, DEFAULT_HIGH)
        )
        span = "the sheet" if degF == 400 else f"{low} to {high} min"
        asked = {
            "schedule-temperature": "400 F",
            "schedule-time": "10 min",
            "second-temperature": "",
            "second-time": "",
            "oven": "425 F",
        }
        name = f"{degF} °F ({(degF - 32) / 1.8:.0f} °C)"
        rows.append((name, filled_in("cure-plan", asked), (f"{best} min", span)))
    foot = "Metal, not air. An estimate: a second point on the sheet beats it, and below the powder's least heat it never cures."
    return _card("cure", "10 min at 400 °F is worth", ("Metal at", "About", "Between"), rows, foot)


def heat_up() -> str:
    rows = []
    for metal, thick, name in (
        ("carbon-steel", "1/8 in", "1/8 in steel"),
        ("carbon-steel", "1/4 in", "1/4 in steel"),
        ("cast-iron", "5/8 in", "5/8 in iron"),
        ("carbon-steel", "1 in", "1 in steel"),
    ):
        asked = {"metal": metal, "thickness": thick, "oven": "400 F"}
        found = answers("cure-plan", asked)
        rows.append(
            (name, filled_in("cure-plan", asked), (found["reach-schedule"].text, found["safe-pull"].text))
        )
    foot = "Fan oven at 400 °F, hung open, sheet 375 °F for 20 min and 400 °F for 12. Check with a probe."
    return _card("warm", "Time in the oven", ("Heaviest", "At 375 °F after", "Pull at"), rows, foot)


def dew_point() -> str:
    rows = []
    for air in (50, 60, 70, 80, 90):
        least = []
        for humidity in (50, 70, 85):
            asked = {"air-temperature": f"{air} F", "humidity": f"{humidity} %"}
            degF = answers("condensation-check", asked)["least-metal"].value
            assert isinstance(degF, float)
            least.append(f"{ceil(degF + DEW_SHORT_F)} F")
        link = filled_in("condensation-check", {"air-temperature": f"{air} F", "humidity": "70 %"})
        rows.append((f"{air} °F ({(air - 32) / 1.8:.0f} °C)", link, tuple(least)))
    foot = "Metal at least this warm: 5.4 °F (3 °C) over the dew point. Read the metal, not the air."
    return _card("dew", "Metal at least, to blast or coat", ("Air", "50 % damp", "70 %", "85 %"), rows, foot)


def touch() -> str:
    rows = []
    for row in table("burns").values():
        asked = {"target": f"{row['metal_degF']} F"}
        after = _short(answers("cool-down", asked)["target-after"].text)
        rows.append(
            (
                row["time"],
                filled_in("cool-down", asked),
                (f"{row['metal_degF']} °F ({row['metal_degC']} °C)", after),
            )
        )
    foot = "Credit nothing for the film. Cooling: 5/8 in iron from 395 °F in still air. Contact thermometer, never the clock."
    return _card("touch", "Bare metal burns skin", ("Touched", "From", "Iron is there after"), rows, foot)


def limits() -> str:
    electro, booth, noise = table("electrostatics"), table("booth_limits"), table("noise_limits")
    earth = electro["hook"]["ground_Mohm"]
    face = booth["electrostatic"]["velocity_ft_min"]
    law, advice = noise["law"]["criterion_dBA"], noise["advice"]["criterion_dBA"]
    monoxide = table("breathing_air")["carbon-monoxide"]["most"]
    cleaning = table("safety_figures")["cleaning-air"]["under_psi"]
    rows = [
        ("Hook, part to earth", filled_in("ground-check", {}), (f"{earth} megohm at most",)),
        ("Booth face", filled_in("booth-air", {}), (f"{face} ft/min at least (electrostatic)",)),
        ("Noise, bare ears", filled_in("noise-dose", {}), (f"{law} dBA for 8 h; advice {advice}",)),
        ("CO in the hood", "~/safety/respirators/", (f"{monoxide} ppm at most",)),
        ("Air for cleaning", "~/safety/air-and-lifting/", (f"under {cleaning} psi, never on people",)),
        ("Closed hollow in oven", filled_in("sealed-cavity", {}), ("never",)),
    ]
    return _card(
        "limits", "Not past this", ("What", "Limit"), rows, "US rules; each page says how well it is known."
    )


# In rows of three of about the same height, for the desk's screen.
CARDS: tuple[Callable[[], str], ...] = (
    coverage,
    film,
    cure,
    blast_air,
    grades,
    limits,
    heat_up,
    dew_point,
    touch,
)
