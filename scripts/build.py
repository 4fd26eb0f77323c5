"""Build the site into site/: the pages, and the engine that answers in the browser.

    python3 scripts/build.py               the whole site
    python3 scripts/build.py --no-engine   pages only, in seconds, with the engine that the last whole build made
    python3 scripts/build.py --draft       as above; links to pages that are still to be written are only named
    python3 scripts/build.py --publish     with brotli copies as well, for a host that serves them

SITE_URL gives the address that it will be published under, REPORT_URL where readers report a wrong number.
"""

from __future__ import annotations

import argparse
import gzip
import os
import shutil
import subprocess
import sys
import time
from pathlib import Path

import bill_of_materials
import environment
import licences
import offline_files
import policy
from environment import ROOT

SITE = ROOT / "site"
COMPRESSED = (".html", ".css", ".js", ".mjs", ".json", ".svg", ".xml", ".webmanifest")


def build(site: Path = SITE, *, engine: bool = True, publish: bool = False, draft: bool = False) -> None:
    """Build the site into a folder, replacing what is there."""
    from calculators.kit import cli

    began = time.monotonic()
    made = ROOT / ".cache" / "site-engine"
    folder = _kept(made)
    if engine:
        import engine as engine_bundle

        shutil.rmtree(made, ignore_errors=True)
        made.mkdir(parents=True)
        folder = engine_bundle.build(made, publish=publish).folder_name
        print(f"engine {folder} ready after {time.monotonic() - began:.1f} s", flush=True)
    settings = {**os.environ, "CALC_ENGINE": folder, "NO_MKDOCS_2_WARNING": "1"}
    keeps = engine and folder != "none"
    settings |= {"CALC_DRAFT": "1"} if draft else {}
    settings |= {"CALC_KEEP": "1"} if keeps else {}
    command = [sys.executable, "-m", "mkdocs", "build", "--quiet", "--site-dir", str(site)]
    command += ["--no-strict" if draft else "--strict"]
    done = subprocess.run(command, cwd=ROOT, env=settings, check=False)
    if done.returncode:
        raise SystemExit("The site was not built: see above.")
    if folder != "none":
        shutil.copytree(made / folder, site / "assets" / "engine" / folder)
    if not os.environ.get("SITE_URL"):
        # an address that nobody publishes under must not be called the right one
        (site / "sitemap.xml").unlink(missing_ok=True)
        (site / "sitemap.xml.gz").unlink(missing_ok=True)
        for page in site.rglob("*.html"):
            text = page.read_text("utf-8")
            page.write_text(_without_canonical(text), "utf-8")
    _vendor(site)
    licences.write(site / "licences")
    bill_of_materials.write(site, cli.version(), engine=folder != "none")
    policy.write(site)
    if keeps:
        kept = offline_files.write(site, folder)
        print(
            f"a device keeps {kept['files']} files, {kept['bytes'] / 1e6:.1f} MB, and the engine once it was used"
        )
    else:
        offline_files.let_go(site)
    for path in site.rglob("*"):
        if path.suffix in COMPRESSED and path.is_file() and "engine" not in path.parts:
            path.with_name(path.name + ".gz").write_bytes(gzip.compress(path.read_bytes(), 6, mtime=0))
    print(f"site built in {time.monotonic() - began:.1f} s")


def _vendor(site: Path) -> None:
    """The one module that is not ours: it turns a link into the square code of a printed job sheet (MIT)."""
    made = environment.NODE_FOLDER / "node_modules" / "uqr"
    (site / "assets" / "vendor").mkdir(parents=True)
    shutil.copy(made / "dist" / "index.mjs", site / "assets" / "vendor" / "uqr.mjs")
    shutil.copy(made / "LICENSE", site / "assets" / "vendor" / "uqr-LICENSE.txt")


def _kept(made: Path) -> str:
    """The engine that the last whole build made: good as long as only pages have changed."""
    found = [path.name for path in made.glob("*/") if (path / "manifest.json").is_file()]
    return found[0] if found else "none"


def _without_canonical(text: str) -> str:
    start = text.find('<link rel="canonical"')
    return text if start < 0 else text[:start] + text[text.index(">", start) + 1 :]


def main() -> int:
    parser = argparse.ArgumentParser(description="Build the site into site/.")
    parser.add_argument("--no-engine", action="store_true", help="pages only")
    parser.add_argument("--draft", action="store_true", help="pages only, dead links named and let through")
    parser.add_argument("--publish", action="store_true", help="with brotli copies")
    parser.add_argument("--out", type=Path, default=SITE, help="the folder to build into, instead of site/")
    words = parser.parse_args()
    environment.ensure("site")
    sys.path.insert(0, str(ROOT))
    build(
        words.out.absolute(),
        engine=not (words.no_engine or words.draft),
        publish=words.publish,
        draft=words.draft,
    )
    return 0


if __name__ == "__main__":
    sys.exit(main())
