"""What of others the site carries: listed in sbom.json, named in NOTICE, its licences beside it, and nothing needless."""

from __future__ import annotations

import json
import re
import sys
import zipfile
from typing import Any
from urllib.parse import unquote

import pytest

from tests.site.conftest import ROOT, SITE

sys.path.insert(0, str(ROOT / "scripts"))

import environment
import theme_parts

LOCKS = ROOT / "scripts" / "locks"


@pytest.fixture(scope="module")
def parts() -> dict[str, dict[str, Any]]:
    bill = json.loads((SITE / "sbom.json").read_text("utf-8"))
    assert (bill["bomFormat"], bill["specVersion"]) == ("CycloneDX", "1.5")
    addresses = [one["purl"] for one in bill["components"]]
    assert addresses == sorted(set(addresses))
    return {one["name"]: one for one in bill["components"]}


def required(parts: dict[str, dict[str, Any]]) -> set[str]:
    return {name for name, one in parts.items() if one["scope"] == "required"}


def test_what_the_site_carries_is_listed_as_required(parts: dict[str, dict[str, Any]]) -> None:
    theme = {"mkdocs-material", "clipboard", "escape-html", "focus-visible", "lunr", "rxjs", "tslib"}
    theme |= {"material-design-color", "Material Design Icons", "Octicons", "Font Awesome Free icons"}
    runtime = {"pyodide", "cpython", "emscripten", "bzip2", "expat", "libffi", "libmpdec", "zlib"}
    runtime |= {"error-stack-parser", "stackframe"}
    packages = {"pint", "flexcache", "flexparser", "platformdirs", "typing-extensions"}
    assert required(parts) == theme | runtime | packages | {"uqr"}
    assert {"mkdocs", "esbuild"} <= set(parts) and "playwright" not in parts


def test_packages_inside_the_engine_are_all_listed(parts: dict[str, dict[str, Any]]) -> None:
    (archive,) = SITE.glob("assets/engine/*/calculators.zip")
    folders = {name.split("/")[0] for name in zipfile.ZipFile(archive).namelist() if ".dist-info/" in name}
    for folder in folders - {"calculators-1.0.0.dist-info"}:
        name, version = folder.removesuffix(".dist-info").replace("_", "-").rsplit("-", 1)
        assert parts[name]["version"] == version and parts[name]["scope"] == "required"


def test_packages_inside_the_themes_scripts_are_all_listed(parts: dict[str, dict[str, Any]]) -> None:
    """By the source maps that the site itself carries."""
    named = {
        found[1]
        for path in (SITE / "assets").rglob("*.map")
        for source in json.loads(path.read_text("utf-8"))["sources"]
        if (found := re.search(r"node_modules/([^/]+)/", source))
    }
    assert {"rxjs", "lunr"} <= named <= required(parts)


def test_sets_of_icons_are_those_that_pages_and_styles_show() -> None:
    files = [*SITE.rglob("*.html"), *SITE.rglob("*.css"), *(SITE / "assets").rglob("*.js")]
    text = "".join(unquote(path.read_text("utf-8")) for path in files)
    drawn = set(re.findall(r"""\bd=["']([^"']+)""", text))
    folder = theme_parts.templates() / ".icons"
    found = {
        path.relative_to(folder).parts[0]
        for path in folder.rglob("*.svg")
        if drawn & set(re.findall(r'\bd="([^"]+)', path.read_text("utf-8")))
    }
    assert found == set(theme_parts.ICONS)


def test_versions_are_those_installed_or_none(parts: dict[str, dict[str, Any]]) -> None:
    """lunr and clipboard say theirs at the head of their files, Expat, zlib and bzip2 in the compiled interpreter."""
    said = {"clipboard": "2.0.11", "lunr": "2.3.9", "expat": "2.6.4", "zlib": "1.3.1", "bzip2": "1.0.6"}
    for name, version in said.items():
        assert parts[name]["version"] == version
    (manifest,) = SITE.glob("assets/engine/*/manifest.json")
    runtime = json.loads(manifest.read_text("utf-8"))["runtime"]
    assert parts["cpython"]["version"] == runtime["python"]
    assert f"emscripten_{parts['emscripten']['version'].replace('.', '_')}" == runtime["platform"]
    silent = {"escape-html", "focus-visible", "rxjs", "tslib", "material-design-color", "libffi", "libmpdec"}
    silent |= {"error-stack-parser", "stackframe", *(name for name, _ in theme_parts.ICONS.values())}
    assert {name for name, one in parts.items() if "version" not in one} == silent


def test_every_part_has_a_licence(parts: dict[str, dict[str, Any]]) -> None:
    assert [name for name, one in parts.items() if not one["licenses"]] == []
    assert parts["pint"]["licenses"] == [{"expression": "BSD-3-Clause"}]
    assert parts["jinja2"]["licenses"] == [{"license": {"name": "BSD License"}}]
    assert parts["rich"]["licenses"] == [{"license": {"id": "MIT"}}]


def test_a_hash_is_that_of_one_file(parts: dict[str, dict[str, Any]]) -> None:
    """The format has several only for several algorithms. Those of Python are the wheels that the engine was made from."""
    hashes = {name: one["hashes"] for name, one in parts.items() if "hashes" in one}
    assert all(len(held) == 1 for held in hashes.values())
    wheels = {name for name, held in hashes.items() if held[0]["alg"] == "SHA-256"}
    assert wheels == {"pint", "flexcache", "flexparser", "platformdirs", "typing-extensions"}
    lock = (LOCKS / "browser.txt").read_text("utf-8")
    assert all(f"sha256:{hashes[name][0]['content']}" in lock for name in wheels)
    rows = json.loads((LOCKS / "package-lock.json").read_text("utf-8"))["packages"]
    for path, row in rows.items():
        if path and not row.get("dev"):
            held = hashes[path.removeprefix("node_modules/")][0]
            # 64 bytes, as many as base64 in the lock stands for
            assert held["alg"] == "SHA-512" and re.fullmatch("[0-9a-f]{128}", held["content"])


def test_nothing_of_this_machine_is_in_the_list() -> None:
    text = (SITE / "sbom.json").read_text("utf-8")
    assert str(ROOT) not in text and str(environment.CACHE) not in text and "http" not in text


def test_the_notice_names_all_that_is_carried(parts: dict[str, dict[str, Any]]) -> None:
    notice = (ROOT / "NOTICE").read_text("utf-8")
    carried, _ = notice.split("Needed to build or to check")
    assert [name for name in required(parts) if name.lower() not in carried.lower()] == []
    for name in required(parts):
        if version := parts[name].get("version"):
            assert re.search(rf"\b{re.escape(name)} {re.escape(version)}\b", carried, re.IGNORECASE), name
    assert (SITE / "licences" / "NOTICE.txt").read_text("utf-8") == notice


def test_licences_that_the_notice_points_to_are_there() -> None:
    folder = SITE / "licences"
    # words that stand in each
    words = {
        "LICENSE.txt": "Apache License",
        "mkdocs-material-LICENSE.txt": "Permission is hereby granted",
        "typing-extensions-LICENSE.txt": "PYTHON SOFTWARE FOUNDATION LICENSE VERSION 2",
        "icons-material-LICENSE.txt": "Pictogrammers Free License",
        "icons-octicons-LICENSE.txt": "MIT License",
        "icons-fontawesome-LICENSE.txt": "CC BY 4.0",
    }
    for name, said in words.items():
        assert said in (folder / name).read_text("utf-8")
    notices = (folder / "in-the-themes-scripts.txt").read_text("utf-8")
    for name in ("clipboard", "escape-html", "lunr", "tslib"):
        assert f"{name}\n\n/*" in notices
    assert "Permission to use, copy, modify" in notices and notices.count("MIT") >= 3


def test_the_themes_scripts_for_other_languages_are_left_out() -> None:
    """Its search worker asks for them by the languages that the index names, and for English alone for none."""
    index = json.loads((SITE / "search" / "search_index.json").read_text("utf-8"))
    assert index["config"]["lang"] == ["en"]
    (worker,) = SITE.glob("assets/javascripts/workers/search.*.min.js.map")
    made = json.loads(worker.read_text("utf-8"))
    texts = dict(zip(made["sources"], made["sourcesContent"], strict=True))
    (asks,) = (text for name, text in texts.items() if name.endswith("/worker/main/index.ts"))
    assert (
        'if (lang !== "en")' in asks
        and "if (config.lang.length > 1)" in asks
        and "if (scripts.length)" in asks
    )
    assert not (SITE / "assets" / "javascripts" / "lunr").exists()
