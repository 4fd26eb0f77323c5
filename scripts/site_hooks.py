"""What MkDocs calls while it builds: the menu from folders, the shortcodes, and links that strict mode does not see."""

from __future__ import annotations

import os
import re
import sys
from datetime import UTC, datetime
from html import escape
from pathlib import Path
from typing import Any
from urllib.parse import urlsplit

from mkdocs.exceptions import PluginError
from mkdocs.structure.files import File
from page_meta import page_meta

ROOT = Path(__file__).resolve().parent.parent
for place in (ROOT, ROOT / "scripts"):
    if str(place) not in sys.path:
        sys.path.insert(0, str(place))

import faults
import glossary
import page_files
import shortcodes
import theme_sheet
from site_pages import STAGES

from calculators.kit import find

ALSO_ASKED = re.compile(r"^\*Also asked as: ([^*]+)\*$", re.MULTILINE)
THEME_SHEET = re.compile(r"assets/stylesheets/.*\.css(\.map)?$")
# Other languages for the search, which its worker asks for by the index's `lang`; and the theme's icon, as the site has its own.
NEVER_ASKED_FOR = re.compile(r"assets/(javascripts/lunr/|images/favicon\.png$)")
STYLE = "assets/style.css"
HOME_LINK = re.compile(r'(href|src|action)="~/([^"]*)"')

_wanted: list[tuple[str, str]] = []


def on_config(config: Any) -> Any:
    """Set the menu: stages in shop order, each with its guides by their `order`, then its calculators."""
    docs = Path(config.docs_dir)
    config.nav = [{"Home": "index.md"}]
    for stage, words in STAGES.items():
        pages = sorted((docs / stage).glob("*.md"), key=lambda path: _place(page_meta(path), path.name))
        if pages:
            config.nav.append(
                {words: [{page_meta(page)["title"]: page.relative_to(docs).as_posix()} for page in pages]}
            )
    missing = [slug for slug in find.slugs() if not (docs / find.stage(slug) / f"{slug}.md").is_file()]
    if missing:
        raise PluginError(f"no page for the calculators {', '.join(missing)}: write docs/<stage>/<slug>.md")
    stamp = int(os.environ.get("SOURCE_DATE_EPOCH", "0")) or None
    day = datetime.fromtimestamp(stamp, UTC) if stamp else datetime.now(UTC)
    config.extra["published"] = bool(os.environ.get("SITE_URL"))
    config.extra["engine_folder"] = os.environ.get("CALC_ENGINE", "none")
    config.extra["keeps"] = bool(os.environ.get("CALC_KEEP"))
    config.extra["built"] = day.strftime("%Y-%m-%d")
    _wanted.clear()
    return config


def on_files(files: Any, config: Any) -> Any:
    """Few files instead of many: the modules bundled, and the theme's style sheets and ours in one."""
    docs = Path(config.docs_dir)
    named = {script for path in docs.rglob("*.md") for script in page_meta(path).get("scripts", [])}
    sheets = [path.relative_to(docs / "assets").as_posix() for path in (docs / "assets").rglob("*.css")]
    made = page_files.made_of(
        docs / "assets", (name.removeprefix("assets/") for name in named), sorted(sheets)
    )
    config.extra["calculator_modules"] = [f"assets/{name}" for name in made.of_calculators]
    bundled = {f"assets/{name}": text for name, text in {**made.scripts, **made.sheets}.items()}
    whole = []
    for file in sorted(files, key=lambda one: str(one.src_uri)):
        if THEME_SHEET.match(file.src_uri) and file.src_uri.endswith(".css"):
            whole.append(theme_sheet.lightened(file.content_string))
        needless = THEME_SHEET.match(file.src_uri) or NEVER_ASKED_FOR.match(file.src_uri)
        if needless or file.src_uri.endswith(".mjs") or file.src_uri in bundled:
            files.remove(file)
    whole += [bundled.pop(name) for name in config.extra["styles"]]
    for name, content in {**bundled, STYLE: "".join(whole)}.items():
        files.append(File.generated(config, name, content=content))
    return files


def _place(meta: dict[str, Any], name: str) -> tuple[bool, int, str]:
    return meta.get("kind") == "calculator", int(meta.get("order", 999)), name


def on_page_markdown(markdown: str, page: Any, config: Any, files: Any) -> str:
    """A page with a calculator has no table of contents beside it: the answer needs the room."""
    markdown = faults.put_in(markdown)
    if "<!-- calculator:" in markdown:
        page.meta["has_calculator"] = True
        if page.meta.get("kind") == "calculator":
            calculator = find.load(Path(page.file.src_uri).stem)
            page.meta["tags"] = [calculator.question, *calculator.keywords]
            page.meta["hide"] = [*page.meta.get("hide", []), "toc"]
            page.meta["kind_class"] = "calculator"
    if asked := ALSO_ASKED.search(markdown):
        # the line stands in sight; the search reads it before the text
        page.meta.setdefault("tags", " ".join(asked[1].split()).rstrip(".").split(", "))
    return markdown


def on_page_content(html: str, page: Any, config: Any, files: Any) -> str:
    """Put the shortcodes in, and turn `~/` into the way to the site's root."""
    depth = page.url.strip("/").count("/") + 1 if page.url.strip("/") else 0
    base = "../" * depth or "./"
    slug = page.url.strip("/").rsplit("/", 1)[-1]
    asked = shortcodes.Page(base, slug, config.extra["engine_folder"])
    try:
        html = shortcodes.put_in(html, asked)
    except shortcodes.Unknown as unknown:
        raise PluginError(f"{page.file.src_uri}: {unknown}") from unknown
    if page.meta.get("kind") == "guide":
        html = glossary.marked(html, page.file.src_uri.removesuffix(".md"))

    def home(found: re.Match[str]) -> str:
        target = found[2].replace("&amp;", "&")
        _wanted.append((page.file.src_uri, urlsplit(target).path))
        return f'{found[1]}="{base}{escape(target)}"'

    return HOME_LINK.sub(home, html)


def on_post_page(output: str, page: Any, config: Any) -> str:
    """Name the theme's search dialog, which has no name of its own for a screen reader, and call a page's list what it is."""
    return output.replace(
        'data-md-component="search" role="dialog"',
        'data-md-component="search" role="dialog" aria-label="Search"',
    ).replace("Table of contents", "On this page")


def on_post_template(output_content: str, template_name: str, config: Any) -> str:
    """The same on the page that says there is no such page."""
    return on_post_page(output_content, None, config)


def on_post_build(config: Any) -> None:
    """Every link that a hook put in must lead somewhere: strict mode has not seen them."""
    site = Path(config.site_dir)
    dead = [f"{page} -> ~/{path}" for page, path in _wanted if not _leads(site, path)]
    if dead and not os.environ.get("CALC_DRAFT"):
        raise PluginError("links that lead nowhere:\n" + "\n".join(sorted(set(dead))))
    print("\n".join(f"to be written: {link}" for link in sorted(set(dead))), end="\n" if dead else "")


def _leads(site: Path, path: str) -> bool:
    return (site / path / "index.html").is_file() or (site / path).is_file()
