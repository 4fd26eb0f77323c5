"""The theme's style sheet, without what no page here has and every page would pay for."""

from __future__ import annotations

import re

RULE = re.compile(r"([^{}]+)\{[^{}]*\}")
# When the theme's script starts it marks the page as one with scripts, and its colours as being switched. Rules for content
# tabs and for transitions meanwhile apply to any element below such a mark, so the browser works out the style of every
# element anew: three times, tens of milliseconds each on a phone.
LEFT_OUT = (".tabbed-", "[data-md-color-switching]")


def lightened(sheet: str) -> str:
    """The sheet without the rules that are only about what is left out.

    >>> lightened(".no-js .tabbed-set>a,.tabbed-set>b{color:red}.tabbed-set,p{color:blue}")
    '.tabbed-set,p{color:blue}'
    """

    def kept(rule: re.Match[str]) -> str:
        needless = all(any(word in one for word in LEFT_OUT) for one in rule[1].split(","))
        return "" if needless else rule[0]

    return RULE.sub(kept, sheet)
