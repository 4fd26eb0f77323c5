"""The theme's style sheet, without what no page here has and every page would pay for."""

from __future__ import annotations

import re

RULE = re.compile(r"([^{}]+)\{[^{}]*\}")
# Content tabs: no page has any, and they are a tenth of the sheet. Colours being switched: the theme's script marks the page
# so when it starts, and a rule for whatever is below that mark has the browser work out every element's style anew, twice.
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
