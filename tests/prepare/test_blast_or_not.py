"""blast-or-not through the door: the demo job, what a person types, and statements printed elsewhere."""

from __future__ import annotations

import random
from itertools import product

import pytest

from calculators import run
from calculators.kit.fields import Choice
from calculators.kit.find import load
from calculators.kit.run import Outcome
from calculators.prepare._blast_questions import ASKED
from calculators.prepare.blast_or_not import THIN_MM, thickness_class
from calculators.tables import table

SLUG = "blast-or-not"
DATA = table("blasting_rules")
CLEAR = {
    "metal": "carbon-steel",
    "coating": "none",
    "rust": "none",
    "oily": "no",
    "thickness": "1/2 in",
    "service": "indoors",
    "lead-known": "never-coated",
    "sealed-hollows": "no",
    "held": "nothing",
    "part": "general",
}


def answer(**changed: str) -> Outcome:
    outcome = run(SLUG, CLEAR | {key.replace("_", "-"): text for key, text in changed.items()})
    assert outcome.ok, outcome.errors
    return outcome


def value(outcome: Outcome, key: str) -> object:
    return outcome.answers[key].value


def levels(outcome: Outcome) -> list[tuple[str, str]]:
    return [(one.level, one.key) for one in outcome.cautions]


# ------------------------------------------------------------------ the demo job


@pytest.mark.derived
def test_the_demo_bench_end_is_blasted_once_its_paint_is_tested() -> None:
    """Flaking paint on rusty cast iron by a salted road, worked by hand from the printed rules of the trade:

    old paint under powder comes off to bare metal (common practice); outdoors near-white, SP 10, about Sa 2 1/2 (common
    practice); an untested coating is tested for lead and chromate first (29 CFR 1910.1025 and 1910.1026).
    """
    outcome = run(SLUG, {})
    assert value(outcome, "verdict") == "blast"
    assert value(outcome, "prep-grade") == "sp10"
    assert "Sa 2 1/2" in outcome.answers["prep-grade"].text
    before = value(outcome, "before")
    assert isinstance(before, list)
    assert before[0] == "test-coating"
    assert before.index("degrease") < before.index("bake-oil-out")
    assert {"two-coats", "prebake", "coat-before-it-rusts"} <= set(value(outcome, "after"))  # type: ignore[arg-type]
    assert outcome.headline.startswith("Not yet: clear the stop first")


@pytest.mark.property
def test_the_form_asks_exactly_what_the_rules_know() -> None:
    choices = {one.key: one.field.slugs for one in load(SLUG).fields if isinstance(one.field, Choice)}
    expected = {key: values for key, values in DATA["asks"].items() if key not in ("verdict", "thickness")}
    assert {key: set(slugs) for key, slugs in choices.items()} == {
        key: set(slugs) for key, slugs in expected.items()
    }


# ------------------------------------------------------------------ printed elsewhere


@pytest.mark.published
@pytest.mark.parametrize("metal", ["galvanised", "stainless", "aluminium-cast", "copper-brass"])
def test_brush_off_is_the_grade_for_metals_without_iron__sspc_sp16(metal: str) -> None:
    """SSPC-SP 16, title: brush-off blast of galvanized steel, stainless steels and non-ferrous metals (title seen printed).

    Its profile of 0.75 mil or more is from memory.
    """
    outcome = answer(metal=metal)
    assert value(outcome, "verdict") == "sweep"
    assert value(outcome, "prep-grade") == "sp16"
    assert outcome.answers["profile"].low == pytest.approx(0.75)


@pytest.mark.published
def test_grades_by_service__sspc_sp10_and_sp6() -> None:
    """SSPC-SP 10 / NACE 2 near-white, near ISO Sa 2 1/2; SP 6 / NACE 3 commercial, near Sa 2 (cross-tables, second-hand)."""
    assert answer(rust="heavy", service="outdoors").answers["prep-grade"].text == (
        "SSPC-SP 10 near-white, about ISO Sa 2 1/2"
    )
    assert answer(rust="heavy", service="indoors").answers["prep-grade"].text == (
        "SSPC-SP 6 commercial, about ISO Sa 2"
    )


@pytest.mark.published
def test_lead_limit_and_presumed_exposure_are_told__29_cfr_1926_62() -> None:
    """29 CFR 1926.62(d)(2)(iv): over 2,500 ug/m3 until measured; 1910.1025(c)(1): limit 50 ug/m3 (seen: excerpts)."""
    outcome = answer(coating="paint-sound", lead_known="lead-found")
    assert value(outcome, "verdict") == "send-out"
    deciding = value(outcome, "why")[0]  # type: ignore[index]
    assert "2,500 micrograms" in deciding
    assert "limit of 50" in deciding
    assert "29 CFR 1926.62" in deciding


# ------------------------------------------------------------------ one job after another


@pytest.mark.property
@pytest.mark.parametrize(
    ("changed", "verdict"),
    [
        ({}, "clean-only"),
        ({"service": "outdoors"}, "blast"),
        ({"rust": "mill-scale"}, "blast"),
        ({"rust": "not-sure"}, "blast"),
        ({"coating": "powder-sound", "lead-known": "tested-free"}, "clean-only"),
        ({"coating": "powder-sound", "lead-known": "tested-free", "rust": "light"}, "blast"),
        ({"coating": "unknown", "lead-known": "tested-free"}, "blast"),
        ({"coating": "chrome-plating"}, "send-out"),
        ({"coating": "yellow-or-cadmium-plating", "service": "salt"}, "send-out"),
        ({"coating": "anodised"}, "refuse"),
        ({"coating": "anodised", "metal": "aluminium-wrought", "lead-known": "tested-free"}, "sweep"),
        ({"metal": "galvanised", "service": "salt"}, "sweep"),
        ({"metal": "galvanised", "coating": "paint-sound", "lead-known": "tested-free"}, "sweep"),
        ({"metal": "galvanised", "rust": "heavy"}, "send-out"),
        ({"metal": "magnesium"}, "refuse"),
        ({"metal": "unknown"}, "refuse"),
        ({"metal": "other"}, "send-out"),
        ({"held": "fuel-or-solvent"}, "refuse"),
        ({"held": "fuel-or-solvent", "coating": "chrome-plating"}, "refuse"),
        ({"part": "cylinder-or-strut"}, "refuse"),
        ({"part": "safety-part"}, "send-out"),
        ({"part": "wheel", "metal": "aluminium-cast"}, "sweep"),
        ({"part": "cookware"}, "refuse"),
    ],
    ids=lambda one: one if isinstance(one, str) else "+".join(one.values()) or "bright steel indoors",
)
def test_verdicts(changed: dict[str, str], verdict: str) -> None:
    """What the trade says of each (common practice, no source, but for the rules named in the table)."""
    assert value(run(SLUG, CLEAR | changed), "verdict") == verdict


@pytest.mark.property
def test_bright_steel_indoors_meets_no_stop() -> None:
    outcome = answer()
    assert outcome.cautions == ()
    assert outcome.headline == "Clean it, no blasting"
    assert value(outcome, "abrasive") == []
    assert outcome.answers["profile"].value is None


@pytest.mark.property
def test_stops_stand_beside_the_field_that_raised_them() -> None:
    outcome = answer(
        coating="flaking", lead_known="not-tested", sealed_hollows="not-sure", part="wheel", rust="heavy"
    )
    assert levels(outcome) == [
        ("stop", "part"),
        ("stop", "lead-known"),
        ("stop", "sealed-hollows"),
        ("caution", ""),
        ("caution", ""),
    ]
    assert outcome.headline == "Not yet: clear 3 stops first, then blast to bare metal"


@pytest.mark.property
def test_never_coated_does_not_clear_a_coated_part() -> None:
    assert ("stop", "lead-known") in levels(answer(coating="paint-sound", lead_known="never-coated"))


@pytest.mark.property
def test_a_tank_is_not_told_to_be_stripped_opened_or_blasted() -> None:
    outcome = answer(
        held="gas-or-pressure", coating="paint-sound", lead_known="tested-free", sealed_hollows="yes"
    )
    assert value(outcome, "before") == []
    assert value(outcome, "after") == []
    assert value(outcome, "abrasive") == []
    assert "set aside by a higher rule" in outcome.answers["why"].text


# ------------------------------------------------------------------ thickness


@pytest.mark.property
@pytest.mark.parametrize(
    ("text", "thin"),
    [
        ("1/8 in", False),
        ("0.125", False),
        ("3.175 mm", False),
        ("0.124 in", True),
        ("3 mm", True),
        ("1.2 mm", True),
    ],
)
def test_thin_means_under_an_eighth_of_an_inch(text: str, thin: bool) -> None:
    outcome = answer(service="outdoors", thickness=text)
    assert (value(outcome, "pressure") == "thin") == thin
    assert (("caution", "thickness") in levels(outcome)) == thin
    assert ("steel-grit" in value(outcome, "abrasive")) != thin  # type: ignore[operator]


@pytest.mark.property
def test_no_thickness_counts_as_thin_and_says_so() -> None:
    outcome = answer(service="outdoors", thickness="")
    assert value(outcome, "pressure") == "not-measured"
    assert ("note", "thickness") in levels(outcome)
    assert thickness_class(None) == "not-sure"
    assert thickness_class(THIN_MM) == "thick"


@pytest.mark.property
def test_inches_and_millimetres_give_the_same_answer() -> None:
    inches, metric = answer(thickness="0.1 in"), answer(thickness="2.54 mm")
    assert {key: one.text for key, one in inches.answers.items()} == {
        key: one.text for key, one in metric.answers.items()
    }


# ------------------------------------------------------------------ what would change it


@pytest.mark.property
def test_what_would_change_it_is_true_when_tried() -> None:
    """Each single other answer is typed into the form: the verdict turns exactly where the list says so.

    A metal that brings up further questions is tried with every answer to them.
    """
    drawn = random.Random(3)
    fields = {one.key: one.field for one in load(SLUG).fields if isinstance(one.field, Choice)}

    def asked(key: str, metal: str) -> bool:
        return key not in ASKED or metal in ASKED[key].values

    for _ in range(14):
        texts = {key: drawn.choice(field.slugs) for key, field in fields.items()}
        texts |= {"held": "nothing", "part": "general", "thickness": drawn.choice(["", "1/16 in", "1 in"])}
        outcome = run(SLUG, texts)
        verdict, told = value(outcome, "verdict"), value(outcome, "would-change-it")
        assert isinstance(told, list)
        for key, field in fields.items():
            if not asked(key, texts["metal"]):
                continue
            for slug in field.slugs:
                new = [
                    one
                    for one in ("rust", "service", "oily")
                    if key == "metal" and asked(one, slug) and not asked(one, texts["metal"])
                ]
                tried = [
                    dict(zip(new, given, strict=True))
                    for given in product(*(fields[one].slugs for one in new))
                ]
                becomes = {value(run(SLUG, texts | {key: slug} | more), "verdict") for more in tried}
                start, name = f"{field.label} “", f"“{field.label_of(slug)}”"
                lines = [line for line in told if line.startswith(start) and name in line]
                assert len(lines) == (becomes != {verdict}), (texts, key, slug)
                if lines:
                    said = {one for one, words in DATA["verdicts"].items() if words[1:] in lines[0]}
                    assert said == becomes, (texts, key, slug)
                    assert lines[0].endswith("by what is then asked") == (len(becomes) > 1)


@pytest.mark.property
def test_questions_are_asked_only_where_they_matter() -> None:
    def shown(metal: str) -> set[str]:
        return set(run(SLUG, {"metal": metal}).typed)

    assert "oily" in shown("cast-iron")
    assert "oily" not in shown("carbon-steel")
    assert "rust" not in shown("aluminium-cast")
    assert shown("magnesium") == {"metal", "part", "coating", "lead-known", "sealed-hollows", "held"}
    # what was typed before the question went away says nothing
    assert (
        value(run(SLUG, {"metal": "unknown", "service": "indoors", "thickness": "1"}), "verdict") == "refuse"
    )


# ------------------------------------------------------------------ handed on


@pytest.mark.property
def test_links_lead_on_with_what_was_answered() -> None:
    def links(outcome: Outcome) -> dict[str, dict[str, str]]:
        return {one.slug: dict(one.texts) for one in outcome.carries}

    demo = links(run(SLUG, {}))
    assert demo["blast-plan"] == {"surface": "heavy", "abrasive": "garnet"}
    assert demo["prebake-plan"] == {"metal": "cast-iron"}
    assert demo["cure-plan"] == {"metal": "cast-iron"}
    sheet = links(answer(service="outdoors", thickness="1/16 in"))
    assert sheet["blast-plan"] == {"surface": "light", "abrasive": "garnet", "pressure": "40 psi"}
    assert set(links(answer())) == {"cure-plan"}
    assert links(answer(held="gas-or-pressure")) == {}
    wheel = links(answer(part="wheel", metal="aluminium-cast"))
    assert "bake-history" in wheel
    assert wheel["cure-plan"] == {"metal": "aluminium"}


@pytest.mark.property
def test_every_link_is_understood_where_it_leads() -> None:
    drawn = random.Random(5)
    fields = {one.key: one.field for one in load(SLUG).fields if isinstance(one.field, Choice)}
    for _ in range(150):
        texts = {key: drawn.choice(field.slugs) for key, field in fields.items()}
        texts |= {"held": "nothing", "part": drawn.choice(["general", "wheel"])}
        for one in run(SLUG, texts).carries:
            known = {field.key for field in load(one.slug).fields}
            assert set(one.texts) <= known
            outcome = run(one.slug, dict(one.texts))
            assert outcome.ok, (one, outcome.errors)


@pytest.mark.property
def test_any_mixture_of_answers_gets_one_verdict_and_true_words() -> None:
    """Drawn mixtures through the whole door; every combination is walked through in test_blasting_rules.py."""
    drawn = random.Random(11)
    fields = {one.key: one.field for one in load(SLUG).fields if isinstance(one.field, Choice)}
    for _ in range(400):
        outcome = run(SLUG, {key: drawn.choice(field.slugs) for key, field in fields.items()})
        assert outcome.ok, outcome.errors
        assert value(outcome, "verdict") in DATA["verdicts"]
        assert outcome.answers["verdict"].text == DATA["verdicts"][value(outcome, "verdict")]
        assert len(value(outcome, "why")) >= 3  # type: ignore[arg-type]
        assert not set(value(outcome, "abrasive")) & set(value(outcome, "abrasive-never"))  # type: ignore[arg-type]


@pytest.mark.property
@pytest.mark.parametrize(
    ("key", "text", "sentence"),
    [
        ("metal", "", "Select the metal"),
        ("thickness", "thick", "Thickness must be a number, like 5/8 in"),
        ("thickness", "5 lb", "Thickness must be in in or mm"),
    ],
)
def test_refusals_say_how_to_put_it_right(key: str, text: str, sentence: str) -> None:
    outcome = run(SLUG, CLEAR | {key: text})
    assert not outcome.ok
    assert [(one.key, one.message) for one in outcome.errors] == [(key, sentence)]
