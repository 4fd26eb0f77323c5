"""The rule table of blast-or-not: complete, without contradiction, and never letting go of a safety rule.

Why this is exhaustive. Which rules fire is the intersection of one set of rules for each answer given (a rule drops out as
soon as one answer does not suit it), and everything that the table says follows from the rules that fire. So:
  * `test_every_combination_has_exactly_one_verdict` walks through every combination of every answer, one by one.
  * The other tests fix some answers and need every set of rules that any combination of the rest can fire. `every_ruling`
    gets these by intersecting answer by answer and keeping each different set once: no combination is left out, equal ones
    are looked at once.
  * That the masks mean what the table says is checked against a plain reading of the TOML file, which shares no code with
    the evaluator.
"""

from __future__ import annotations

import random
import tomllib
from collections.abc import Iterator
from itertools import product
from math import prod
from pathlib import Path
from typing import Any

import pytest

from calculators.kit.rules import RuleError, RuleTable, Ruling
from calculators.prepare._blast_questions import ASKED
from calculators.tables import table

DATA = table("blasting_rules")
RULES = RuleTable.from_data(DATA)
ASKS = {key: tuple(values) for key, values in DATA["asks"].items() if key != "verdict"}
WORK = ("blast", "sweep", "clean-only")
STEEL = {"steel-grit", "steel-shot", "used-on-steel"}
COATED = tuple(one for one in ASKS["coating"] if one != "none")
NOT_IRON = tuple(one for one in ASKS["metal"] if one not in ("carbon-steel", "cast-iron"))
RAW = tomllib.loads(
    Path(__file__).parents[2].joinpath("calculators/tables/blasting_rules.toml").read_text("utf-8")
)


def masks_of(**fixed: str | tuple[str, ...]) -> set[int]:
    """Each different set of rules that is left standing by some combination of the answers that are not fixed."""
    masks = {-1}
    for key, values in ASKS.items():
        wanted = fixed.get(key.replace("-", "_"), values)
        wanted = (wanted,) if isinstance(wanted, str) else wanted
        masks = {mask & RULES.standing(key, value) for mask in masks for value in wanted}
    return masks


def every_ruling(**fixed: str | tuple[str, ...]) -> Iterator[Ruling]:
    """What the table says for every combination of the answers that are not fixed (and of those listed for one that is)."""
    early = sum(1 << i for i, rule in enumerate(RULES.rules) if "verdict" not in rule.when)
    seen = set()
    for mask in masks_of(**fixed):
        verdict = RULES.first_of(mask & early)
        fired = mask & RULES.standing("verdict", verdict)
        if fired not in seen:
            seen.add(fired)
            yield Ruling(RULES, verdict, fired)


def level_of(ruling: Ruling, level: str) -> list[str]:
    return [key for key in ruling.all("cautions") if DATA["cautions"][key]["level"] == level]


def allowed(ruling: Ruling) -> set[str]:
    return set(ruling.all("abrasive")) - set(ruling.all("abrasive-never"))


# ------------------------------------------------------------------ complete and free of contradiction


@pytest.mark.property
def test_every_combination_has_exactly_one_verdict() -> None:
    """Each of the millions of combinations, one by one: some rule gives a verdict, and the highest ones agree on it."""
    seen: dict[int, str] = {}
    count = 0

    def verdict_of(mask: int) -> str:
        saying = [rule for i, rule in enumerate(RULES.rules) if mask >> i & 1 and "verdict" in rule.says]
        assert saying, "a combination with no verdict"
        highest = max(rule.rank for rule in saying)
        verdicts = {rule.says["verdict"] for rule in saying if rule.rank == highest}
        assert len(verdicts) == 1, (
            f"{[rule.id for rule in saying if rule.rank == highest]} contradict each other"
        )
        return str(verdicts.pop())

    late = sum(1 << i for i, rule in enumerate(RULES.rules) if "verdict" in rule.when)
    masks = [[RULES.standing(key, value) & ~late for value in values] for key, values in ASKS.items()]
    *outer, inner = sorted(masks, key=len)
    for answers in product(*outer):
        common = -1
        for mask in answers:
            common &= mask
        for mask in inner:
            fired = common & mask
            count += 1
            if fired not in seen:
                seen[fired] = verdict_of(fired)
                assert RULES.first_of(fired) == seen[fired]
    assert count == prod(len(values) for values in ASKS.values())
    assert set(seen.values()) == set(DATA["asks"]["verdict"]), "a verdict that nothing leads to"


@pytest.mark.property
def test_every_combination_has_one_grade_one_profile_one_pressure() -> None:
    for ruling in every_ruling():
        for effect in ("prep-grade", "profile", "pressure"):
            highest = ruling.deciding(effect).rank
            said = {
                rule.says[effect] for rule in ruling.fired if effect in rule.says and rule.rank == highest
            }
            assert said == {ruling.one(effect)}, [rule.id for rule in ruling.fired]


@pytest.mark.derived
def test_evaluator_agrees_with_a_plain_reading_of_the_file() -> None:
    """The same table read by a few lines that use no masks and none of the evaluator's code, for 4,000 drawn combinations.

    Each rule is asked about on its own as well: one combination that fires it and one changed in a single answer.
    """
    groups = RAW["groups"]

    def fires(rule: dict[str, Any], facts: dict[str, str]) -> bool:
        for key, values in rule.get("when", {}).items():
            if facts[key] not in [one for value in values for one in groups.get(key, {}).get(value, [value])]:
                return False
        return True

    def plainly(facts: dict[str, str]) -> tuple[str, list[str], list[str]]:
        early = [rule for rule in RAW["rule"] if "verdict" not in rule.get("when", {}) and fires(rule, facts)]
        ranked = sorted(
            (rule for rule in early if "verdict" in rule["says"]), key=lambda rule: RAW["ranks"][rule["rank"]]
        )
        verdict = ranked[-1]["says"]["verdict"]
        fired = [rule for rule in RAW["rule"] if fires(rule, facts | {"verdict": verdict})]
        heard = [rule for rule in fired if rule["says"].get("verdict", verdict) == verdict]
        steps = [
            step for step in RAW["before"] if any(step in rule["says"].get("before", []) for rule in heard)
        ]
        return verdict, [rule["id"] for rule in fired], steps

    drawn = random.Random(20)
    cases = [{key: drawn.choice(values) for key, values in ASKS.items()} for _ in range(3_000)]
    for _ in range(1_000):  # near the ordinary: most drawn combinations are refused for something
        case = dict.fromkeys(ASKS, "") | {key: drawn.choice(values) for key, values in ASKS.items()}
        cases.append(case | {"held": "nothing", "part": "general", "lead-known": "tested-free"})
    for facts in cases:
        ruling = RULES.ruling(facts)
        assert (ruling.settled, [rule.id for rule in ruling.fired], list(ruling.all("before"))) == plainly(
            facts
        )


@pytest.mark.property
def test_every_rule_can_fire_and_every_slug_has_words() -> None:
    fired: set[str] = set()
    for ruling in every_ruling():
        fired |= {rule.id for rule in ruling.fired}
    assert fired == {rule.id for rule in RULES.rules}
    places = {
        "verdict": "verdicts",
        "prep-grade": "prep-grades",
        "pressure": "pressures",
        "abrasive": "abrasives",
        "abrasive-never": "abrasives",
    }
    used: dict[str, set[str]] = {}
    for rule in RULES.rules:
        for effect, said in rule.says.items():
            used.setdefault(places.get(effect, effect), set()).update(
                [said] if isinstance(said, str) else said
            )
    assert used.pop("profile") == {*DATA["profiles"], "none"}
    for name, slugs in used.items():
        assert slugs == set(DATA[name]), f"[{name}]: {slugs ^ set(DATA[name])}"
    assert {one["about"] for one in DATA["cautions"].values()} <= {"", *ASKS}


@pytest.mark.property
def test_every_source_is_declared() -> None:
    sources = table("sources")
    assert {key for rule in RULES.rules for key in rule.sources} <= set(sources)


# ------------------------------------------------------------------ safety


@pytest.mark.property
def test_no_rule_overrules_safety() -> None:
    """A safety rule's verdict stands unless another safety rule has a higher one; its stops and nevers stand always."""
    safety = [rule for rule in RULES.rules if rule.safety]
    assert {rule.id for rule in safety} > {"magnesium", "never-silica-sand", "coating-not-tested"}
    for ruling in every_ruling():
        deciding = ruling.deciding("verdict")
        cautions, never, out = set(ruling.all("cautions")), set(ruling.all("abrasive-never")), allowed(ruling)
        for rule in ruling.fired:
            if not rule.safety:
                continue
            assert cautions.issuperset(rule.says.get("cautions", ()))
            assert never.issuperset(rule.says.get("abrasive-never", ()))
            assert out.isdisjoint(rule.says.get("abrasive-never", ()))
            if rule.says.get("verdict", ruling.settled) != ruling.settled:
                assert deciding.safety
                assert deciding.rank > rule.rank


@pytest.mark.property
def test_a_part_not_worked_on_here_gets_no_work() -> None:
    """Nothing under Before or After tells anyone to strip, drill, blast or coat a part that is refused or sent out."""
    harmless = {
        "identify-metal",
        "find-what-it-held",
        "ask-maker",
        "look-for-cracks",
        "test-coating",
        "look-for-old-paint",
    }
    by_others = {"strip-plating", "weld-in-place-of-filler", "galvanise-again"}
    for ruling in every_ruling():
        if ruling.settled in WORK:
            continue
        before = set(ruling.all("before"))
        assert before <= (harmless if ruling.settled == "refuse" else harmless | by_others)
        assert not ruling.all("after")
        assert not allowed(ruling)
        assert level_of(ruling, "stop") or ruling.deciding("verdict").id == "galvanised-red-rust"


@pytest.mark.property
def test_every_blast_or_sweep_says_degrease_first() -> None:
    """SSPC-SP 1 before any blasting, oily or not (the grade's own text, second-hand)."""
    for ruling in every_ruling():
        assert ("degrease" in ruling.all("before")) == (ruling.settled in WORK)
    assert "SSPC-SP 1" in DATA["before"]["degrease"]


@pytest.mark.property
def test_galvanised_never_gets_more_than_a_sweep() -> None:
    rulings = list(every_ruling(metal="galvanised"))
    assert {ruling.settled for ruling in rulings} == {"sweep", "clean-only", "send-out", "refuse"}
    assert all(ruling.one("prep-grade") == "sp16" for ruling in rulings if ruling.settled == "sweep")
    assert all(
        "40 psi" in DATA["pressures"][ruling.one("pressure")]
        for ruling in rulings
        if ruling.settled == "sweep"
    )


@pytest.mark.property
@pytest.mark.parametrize("metal", NOT_IRON)
def test_no_steel_abrasive_on_a_metal_without_iron(metal: str) -> None:
    for ruling in every_ruling(metal=metal):
        assert set(ruling.all("abrasive-never")) >= STEEL
        assert not allowed(ruling) & STEEL


@pytest.mark.property
def test_sand_and_organic_abrasive_never() -> None:
    for ruling in every_ruling():
        assert set(ruling.all("abrasive-never")) >= {"silica-sand", "organic", "plastic"}
        assert not allowed(ruling) & {"silica-sand", "organic", "plastic", "glass-bead"}


@pytest.mark.property
def test_work_with_abrasive_always_has_an_abrasive_a_profile_and_a_dust_caution() -> None:
    for ruling in every_ruling():
        blasting = ruling.settled in ("blast", "sweep")
        assert bool(allowed(ruling)) == blasting
        assert (ruling.one("profile") != "none") == blasting
        assert (ruling.one("pressure") != "none") == blasting
        assert ("dust" in ruling.all("cautions")) == blasting


@pytest.mark.property
def test_magnesium_and_unknown_metal_are_refused() -> None:
    for ruling in every_ruling(metal=("magnesium", "unknown")):
        assert ruling.settled == "refuse"
        assert level_of(ruling, "stop")


@pytest.mark.property
def test_tanks_and_pressure_parts_are_refused() -> None:
    held = ("fuel-or-solvent", "gas-or-pressure", "not-sure")
    for ruling in (*every_ruling(held=held), *every_ruling(part="cylinder-or-strut")):
        assert ruling.settled == "refuse"
        assert level_of(ruling, "stop")
        assert "vent" not in ruling.all("before")


@pytest.mark.property
def test_chrome_and_cadmium_go_out_or_are_refused() -> None:
    for coating, caution in (("chrome-plating", "chrome"), ("yellow-or-cadmium-plating", "cadmium")):
        for ruling in every_ruling(coating=coating):
            assert ruling.settled in ("send-out", "refuse")
            assert caution in level_of(ruling, "stop")
    ordinary = {"metal": "carbon-steel", "held": "nothing", "part": "general", "lead_known": "tested-free"}
    for coating in ("chrome-plating", "yellow-or-cadmium-plating"):
        assert {one.settled for one in every_ruling(coating=coating, **ordinary)} == {"send-out"}
    assert "bake" in DATA["cautions"]["cadmium"]["text"]


@pytest.mark.property
def test_coated_and_not_tested_is_tested_first() -> None:
    """Whatever its age, and whatever else is wrong with it. `Never coated` cannot be true of a coated part."""
    for ruling in every_ruling(coating=COATED, lead_known=("not-tested", "never-coated")):
        assert "coating-not-tested" in level_of(ruling, "stop")
        assert "test-coating" in ruling.all("before")
        if ruling.settled in WORK:
            assert ruling.all("before")[0] in ("test-coating", "ask-maker")
    for ruling in every_ruling(lead_known="lead-found"):
        assert ruling.settled in ("send-out", "refuse")
    assert "whatever its age" in DATA["cautions"]["coating-not-tested"]["text"]
    for word in ("lead", "chromate"):
        assert word in DATA["before"]["test-coating"]


@pytest.mark.property
def test_a_hollow_that_may_be_sealed_stops_the_job() -> None:
    for ruling in every_ruling(sealed_hollows=("yes", "not-sure")):
        stops = set(level_of(ruling, "stop")) & {"sealed-hollow", "sealed-hollow-leave-shut"}
        assert len(stops) == 1
        assert (
            "vented" in DATA["cautions"][next(iter(stops))]["text"]
            or "Vent" in DATA["cautions"][next(iter(stops))]["text"]
        )
        assert ("vent" in ruling.all("before")) == (ruling.settled in WORK)


@pytest.mark.property
def test_paint_comes_off_to_bare_metal_and_sound_powder_may_stay() -> None:
    ordinary: dict[str, str | tuple[str, ...]] = {
        "held": "nothing",
        "part": ("general", "wheel", "with-rubber-or-bearings"),
        "lead_known": "tested-free",
    }
    for ruling in every_ruling(coating=("paint-sound", "flaking", "unknown")):
        assert ruling.settled != "clean-only"
    iron = ("carbon-steel", "cast-iron", "aluminium-wrought", "aluminium-cast", "stainless", "copper-brass")
    assert {one.settled for one in every_ruling(coating="unknown", metal=iron, **ordinary)} == {"blast"}
    for ruling in every_ruling(coating="powder-sound", metal="carbon-steel", rust="none", **ordinary):
        assert ruling.settled == "clean-only"
        assert "scuff-and-try" in ruling.all("after")
    for ruling in every_ruling(coating="powder-sound", metal="carbon-steel", rust="light", **ordinary):
        assert ruling.settled == "blast"


@pytest.mark.property
def test_wheels_brakes_and_steering_are_referred_to_their_maker() -> None:
    for ruling in every_ruling(part=("wheel", "safety-part", "not-sure")):
        assert "ask-maker" in level_of(ruling, "stop")
        assert "maker" in DATA["cautions"]["ask-maker"]["text"]
    for ruling in every_ruling(part="wheel"):
        assert "ask-maker" in ruling.all("before")
    assert "bake-history" in DATA["before"]["ask-maker"]


@pytest.mark.property
def test_thin_sheet_is_told_so() -> None:
    for ruling in every_ruling(thickness="thin"):
        if ruling.settled in ("blast", "sweep"):
            assert "thin-sheet" in level_of(ruling, "caution")
            assert ruling.one("pressure") in ("thin", "zinc")
            assert not allowed(ruling) & {"steel-grit", "steel-shot"}


@pytest.mark.property
@pytest.mark.parametrize("key", ["rust", "oily", "service", "thickness"])
def test_an_answer_that_the_form_hides_changes_nothing(key: str) -> None:
    """A question is hidden exactly for the metals on which every answer to it fires the same rules."""
    for metal in ASKS["metal"]:
        fired = [{ruling.mask for ruling in every_ruling(metal=metal, **{key: one})} for one in ASKS[key]]
        assert all(one == fired[0] for one in fired) == (metal not in ASKED[key].values), metal


@pytest.mark.property
def test_at_home_never_says_yes_to_what_a_stop_forbids() -> None:
    """Every combination has a line; a part that is not worked on is left as it is; an untested coating is not touched."""
    for ruling in every_ruling():
        home = set(ruling.all("at-home"))
        assert home
        assert ("leave-it" in home) == (ruling.settled not in WORK)
        if ruling.settled not in WORK:
            assert home <= {"leave-it", "nothing-before-the-test"}
        assert ("nothing-before-the-test" in home) == ("coating-not-tested" in ruling.all("cautions"))
        assert ("never-in-the-open" in home) == (ruling.settled in ("blast", "sweep"))
        assert ("no-drilling-blind" in home) == ("sealed-hollow" in ruling.all("cautions"))
        assert ("not-in-a-kitchen-oven" in home) == (ruling.settled in WORK)
    for slug, words in DATA["at-home"].items():
        assert words.startswith(("Yes", "No: ", "Only if ")), slug
    # whatever is allowed says by itself that an untested coating is not meant
    for slug in ("take-apart-and-wash", "closed-cabinet-only"):
        assert "tested" in DATA["at-home"][slug]


@pytest.mark.property
def test_a_shop_is_asked_questions() -> None:
    for ruling in every_ruling():
        asked = set(ruling.all("ask-a-shop"))
        assert asked or ruling.settled == "refuse"
        assert ("who-tests" in asked) == ("coating-not-tested" in ruling.all("cautions"))
        if ruling.settled in WORK:
            assert {"primer-film-and-cure", "what-stays-bare"} <= asked
        if ruling.settled in ("blast", "sweep"):
            assert "grade-and-abrasive" in asked
    assert all(words.endswith("?") for words in DATA["ask-a-shop"].values())


@pytest.mark.property
def test_whoever_blasts_is_told_of_valve_hose_ears_and_light_metal_dust() -> None:
    for ruling in every_ruling():
        cautions = set(ruling.all("cautions"))
        assert ("nozzle-and-hose" in cautions) == (ruling.settled in ("blast", "sweep"))
    for metal in ("aluminium-wrought", "aluminium-cast"):
        for ruling in every_ruling(metal=metal):
            assert ("aluminium-dust" in ruling.all("cautions")) == (ruling.settled in ("blast", "sweep"))
    for law in ("1910.244(b)", "1910.95"):
        assert law in DATA["cautions"]["nozzle-and-hose"]["text"]


@pytest.mark.property
def test_the_abrasives_that_fit_are_those_of_the_table_of_abrasives() -> None:
    """Two tables, one truth: what is allowed here may touch the metal there, by hand, and nothing there forbids it."""
    abrasives = table("abrasives")
    for metal in ASKS["metal"]:
        row = "aluminium" if metal.startswith("aluminium") else metal
        for ruling in every_ruling(metal=metal):
            for one in allowed(ruling):
                assert row in abrasives[one]["may_touch"]
                assert row not in abrasives[one]["never_touch"]
                assert abrasives[one]["hand"] == "yes"
            for one in set(ruling.all("abrasive-never")) & set(abrasives):
                assert (
                    row in abrasives[one]["never_touch"]
                    or abrasives[one]["hand"] == "no"
                    or one.startswith("steel")
                    or row not in abrasives[one]["may_touch"]
                )


@pytest.mark.property
def test_changes_are_exactly_the_single_answers_that_turn_the_verdict() -> None:
    drawn = random.Random(7)
    for _ in range(300):
        facts = {key: drawn.choice(values) for key, values in ASKS.items()}
        now = RULES.settle(facts)
        expected = {
            (key, value, verdict)
            for key, values in ASKS.items()
            for value in values
            if (verdict := RULES.settle(facts | {key: value})) != now
        }
        assert {(change.fact, change.value, change.becomes) for change in RULES.changes(facts)} == expected


# ------------------------------------------------------------------ printed elsewhere


def reason(rule_id: str) -> str:
    return next(rule.reason for rule in RULES.rules if rule.id == rule_id)


@pytest.mark.published
def test_organic_abrasive__29_cfr_1910_94_a() -> None:
    """29 CFR 1910.94(a)(2): organic abrasives that can burn are used only in automatic systems (seen: second-hand)."""
    rule = next(rule for rule in RULES.rules if rule.id == "never-organic-by-hand")
    assert rule.when == {}
    assert rule.safety
    assert rule.sources == ("osha-1910-94",)
    assert "automatic" in rule.reason


@pytest.mark.published
def test_lead_blasting_exposure__29_cfr_1926_62_d_2_iv() -> None:
    """29 CFR 1926.62(d)(2)(iv): over 2,500 ug/m3 until measured; 1910.1025(c)(1): limit 50 ug/m3 (seen: excerpts)."""
    assert "more than 2,500 micrograms" in reason("lead-found")
    assert "limit of 50" in reason("lead-found")


@pytest.mark.published
def test_silica_limit__29_cfr_1910_1053_c() -> None:
    """29 CFR 1910.1053(c): 0.05 mg/m3 respirable crystalline silica, 8 h mean (seen: excerpt)."""
    assert "0.05 mg" in reason("never-silica-sand")


@pytest.mark.published
@pytest.mark.parametrize(
    ("rule", "grade", "stain", "iso"),
    [("grade-outside", "sp10", "5 %", "Sa 2 1/2"), ("grade-indoors", "sp6", "33 %", "Sa 2")],
    ids=["SSPC-SP10", "SSPC-SP6"],
)
def test_blast_grades__stain_and_iso_name(rule: str, grade: str, stain: str, iso: str) -> None:
    """SSPC-SP 10 / NACE 2: stain on at most 5 %; SP 6 / NACE 3: 33 %; near ISO 8501-1 Sa 2 1/2 and Sa 2 (second-hand)."""
    found = next(one for one in RULES.rules if one.id == rule)
    assert found.says["prep-grade"] == grade
    assert f"no more than {stain} of each unit area" in found.reason
    assert DATA["prep-grades"][grade].endswith(iso)


@pytest.mark.published
def test_sweep_roughness__sspc_sp16() -> None:
    """SSPC-SP 16: profile of at least 0.75 mil (19 um); the figure is from memory."""
    assert DATA["profiles"]["sweep"]["low_mil"] == 0.75
    assert round(0.75 * 25.4) == 19
    assert "0.75 mil (19 um)" in reason("profile-sweep")


# ------------------------------------------------------------------ the evaluator refuses a bad table


def small(*rules: dict[str, Any]) -> dict[str, Any]:
    return {
        "decides": "verdict",
        "one": ["verdict"],
        "lists": ["before"],
        "asks": {"colour": ["red", "blue"], "size": ["big", "small"], "verdict": ["keep", "drop"]},
        "ranks": {"high": 2, "low": 1},
        "safety": {"from": "high"},
        "rule": [{"reason": "r", "source": "s", "rank": "low"} | rule for rule in rules],
    }


def test_two_rules_of_one_rank_that_contradict_are_refused() -> None:
    red = {"id": "red", "when": {"colour": ["red"]}, "says": {"verdict": "keep"}}
    big = {"id": "big", "when": {"size": ["big"]}, "says": {"verdict": "drop"}}
    with pytest.raises(RuleError, match="red and big have one rank"):
        RuleTable.from_data(small(red, big))
    assert (
        RuleTable.from_data(small(red, big | {"rank": "high"})).settle({"colour": "red", "size": "big"})
        == "drop"
    )


def test_a_gap_is_said_and_not_filled() -> None:
    rules = RuleTable.from_data(
        small({"id": "red", "when": {"colour": ["red"]}, "says": {"verdict": "keep"}})
    )
    with pytest.raises(RuleError, match="no rule says verdict"):
        rules.settle({"colour": "blue", "size": "big"})


@pytest.mark.parametrize(
    ("rule", "words"),
    [
        ({"id": "a", "when": {"weight": ["red"]}, "says": {"verdict": "keep"}}, "asks about 'weight'"),
        ({"id": "a", "when": {"colour": ["green"]}, "says": {"verdict": "keep"}}, "colour cannot be"),
        ({"id": "a", "when": {"colour": []}, "says": {"verdict": "keep"}}, "colour cannot be"),
        ({"id": "a", "says": {"verdict": ["keep"]}}, "one value each"),
        ({"id": "a", "says": {"shape": "round"}}, "one value each"),
        (
            {"id": "a", "when": {"verdict": ["keep"]}, "says": {"verdict": "drop"}},
            "both asks about verdict and says it",
        ),
    ],
)
def test_a_rule_that_names_something_unknown_is_refused(rule: dict[str, Any], words: str) -> None:
    with pytest.raises(RuleError, match=words):
        RuleTable.from_data(small(rule))
