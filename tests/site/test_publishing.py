"""What DEVELOPERS.md promises of hosts."""

from __future__ import annotations

import json
import os
import re
import subprocess
import sys
from pathlib import Path
from urllib.parse import urljoin

import pytest

ROOT = Path(__file__).resolve().parents[2]
sys.path.insert(0, str(ROOT / "scripts"))

import environment  # noqa: E402

# The engine's own reader of the image, with a host that has no image.bin: what it asks for, and whether anything came.
WITHOUT_THE_LARGE_FILE = """
globalThis.self = globalThis;
const [module, brotli, encoding] = process.argv.slice(1);
const asked = [];
globalThis.fetch = async (address) => {
  asked.push(address.split("/").at(-1));
  return address.endsWith("image.bin") ? new Response("", { status: 404 }) : new Response("packed");
};
const { readImage } = await import(module);
const came = await new Response(await readImage("https://host.example/", { brotli: brotli === "built" }, encoding)).text();
console.log(JSON.stringify([...asked, came]));
"""


@pytest.mark.parametrize("brotli", ["built", "not built"])
@pytest.mark.parametrize("encoding", ["br", "gzip", ""])
def test_a_host_may_be_without_the_unpacked_image(brotli: str, encoding: str) -> None:
    module = (ROOT / "docs/assets/calculator/engine/image.mjs").as_uri()
    command = [environment.node(), "--input-type=module", "-e", WITHOUT_THE_LARGE_FILE]
    done = subprocess.run(
        [*command, module, brotli, encoding], capture_output=True, encoding="utf-8", check=True
    )
    *asked, came = json.loads(done.stdout)
    assert came == "packed"
    # one request in vain, where brotli is offered
    in_vain = ["image.bin"] if (brotli, encoding) == ("built", "br") else []
    assert asked == [*in_vain, "image.bin.gz"]


def test_with_its_address_the_page_for_what_is_not_there_leads_into_its_folder(tmp_path: Path) -> None:
    """It is served at any depth, so it cannot name its files by the way from itself."""
    settings = {**os.environ, "SITE_URL": "https://host.example/coating/"}
    command = [sys.executable, ROOT / "scripts" / "build.py", "--no-engine", "--out", tmp_path / "site"]
    subprocess.run(command, cwd=ROOT, env=settings, check=True)
    text = (tmp_path / "site" / "404.html").read_text("utf-8")
    text = re.sub(r"<script\b.*?</script>", "", text, flags=re.DOTALL)
    links = re.findall(r'(?:href|src|data-worker|data-engine)="([^"#][^"]*)"', text)
    leads = {urljoin("https://host.example/elsewhere/and/deeper", link) for link in links}
    folder = settings["SITE_URL"]
    assert {folder, f"{folder}assets/style.css"} <= leads
    assert [one for one in leads if not one.startswith(folder)] == []
