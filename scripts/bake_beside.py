"""A bake beside you: the part of the bake log's page that runs while a part is in the oven. Hidden until its script runs."""

from __future__ import annotations

BUTTON = '<button type="button" class="md-button{kind}" data-act="{act}">{words}</button>'


def bake_beside_html() -> str:
    """The element for the page."""
    return (
        '<bake-beside hidden data-search-exclude aria-label="A bake beside you" role="region">'
        f"{_idle()}{_left()}{_running()}"
        '<p class="beside-said" role="status" data-said></p><div class="beside-notes" data-notes></div>'
        f'<div class="beside-curve" data-curve hidden></div>{_kept()}</bake-beside>'
    )


def _button(act: str, words: str, main: bool = False) -> str:
    return BUTTON.format(act=act, words=words, kind=" md-button--primary" if main else "")


def _idle() -> str:
    return (
        '<div class="beside-part" data-part="idle" hidden>'
        f'<p class="beside-acts">{_button("start", "Part is in: start the clock", main=True)}'
        "<span>Then add readings as you take them, and see when to pull.</span></p></div>"
    )


def _left() -> str:
    return (
        '<div class="beside-part" data-part="left" hidden><h2 class="beside-title" tabindex="-1">A bake was left here</h2>'
        '<p data-left></p><p class="beside-acts">'
        f"{_button('go-on', 'Go on with it', main=True)}{_button('end', 'End it and keep the log')}"
        f"{_button('throw-away', 'Throw it away')}</p></div>"
    )


def _running() -> str:
    cells = "".join(
        f'<div class="beside-cell" data-cell="{key}"><dt>{label}</dt>'
        f"<dd><strong data-big{" role='timer'" if key == 'elapsed' else ''}></strong> <span data-small></span></dd></div>"
        for key, label in (
            ("elapsed", "In the oven"),
            ("pull", "Pull in about"),
            ("last", "Last reading"),
            ("cure", "Cure so far"),
        )
    )
    return (
        '<div class="beside-part" data-part="running" hidden>'
        '<h2 class="beside-title" tabindex="-1">A bake beside you</h2>'
        f'<dl class="beside-glance">{cells}</dl>'
        '<form class="beside-entry" novalidate autocomplete="off" data-entry>'
        '<label for="beside-reading">Metal temperature now</label><span class="beside-row">'
        '<input type="text" id="beside-reading" inputmode="decimal" enterkeyhint="done" aria-describedby="beside-wrong">'
        '<select aria-label="Unit of the reading"><option value="F">F</option><option value="C">C</option></select>'
        '<button type="submit" class="md-button md-button--primary">Add reading</button></span>'
        '<span class="beside-wrong" id="beside-wrong" data-wrong></span></form>'
        '<p class="beside-alarm" data-alarm></p>'
        f'<p class="beside-acts">{_button("pulled", "Pulled now")}{_button("sound", "Sound: off")}</p>'
        '<p class="beside-small" data-screen></p>'
        '<p class="beside-small" data-stands></p></div>'
    )


def _kept() -> str:
    return (
        '<div class="beside-part" data-part="kept" hidden>'
        '<h2 class="beside-title" tabindex="-1" data-kept-title>Readings of this bake</h2><p data-verdict></p>'
        '<p class="beside-small" data-facts></p><ol class="beside-readings" data-readings></ol>'
        '<details class="beside-start" data-running-only><summary>The clock was started late?</summary>'
        '<form class="beside-row" novalidate data-went-in><label for="beside-went-in">It went in</label>'
        '<input type="text" id="beside-went-in" inputmode="decimal" size="5" aria-describedby="beside-went-in-wrong">'
        '<span>min ago</span><button type="submit" class="md-button">Set the clock</button></form>'
        '<p class="beside-wrong" id="beside-went-in-wrong" data-went-in-wrong></p></details>'
        f'<p class="beside-acts" data-running-only>{_button("end", "End this bake")}{_button("throw-away", "Throw it away")}</p>'
        '<p class="beside-acts" data-ended-only>'
        f"{_button('save', 'Save as CSV', main=True)}{_button('print', 'Print')}{_button('new', 'New bake')}"
        f"{_button('go-on', 'Go on with this one')}</p></div>"
    )
