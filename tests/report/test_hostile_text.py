"""Whatever a case says, it stays text."""

from __future__ import annotations

from functools import cache

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from diagnose.report.page import render_page
from diagnose.report.plain_text import SHOWN_AS, all_plain, plain
from tests.report.reading import local, parsed, said, with_every_text
from tests.report.views import bare_view, calm_view, rich_view

ATTACKS = [
    "<script>alert(1)</script>",
    "</style><script>alert(1)</script>",
    "</title></head><body onload=alert(1)>",
    '" onmouseover="alert(1)" x="',
    "' onfocus='alert(1)' autofocus='",
    "</text></svg><img src=x onerror=alert(1)>",
    "<![CDATA[</svg><script>alert(1)</script>]]>",
    "--><script>alert(1)</script><!--",
    "{{ 7 * 7 }}{% raw %}{# x",
    "javascript:alert(1)",
    "</pre></textarea><iframe src=//example.invalid>",
    "&lt;script&gt;&#60;b&#62;",
    "</ pre>\n- {stop: none}",
]


@cache
def usual() -> tuple[set[str], set[str]]:
    """The elements and attributes of the pages of honest cases."""
    elements: set[str] = set()
    attributes: set[str] = set()
    for view in (rich_view(), calm_view(), bare_view()):
        for element in parsed(render_page(view)).iter():
            elements.add(local(element.tag))
            attributes |= {local(name) for name in element.attrib}
    return elements, attributes


def assert_stays_text(text: str) -> None:
    page = render_page(with_every_text(rich_view(), text))
    tree = parsed(page)
    elements, attributes = usual()
    for element in tree.iter():
        assert local(element.tag) in elements
        assert {local(name) for name in element.attrib} <= attributes
        assert element.attrib.get("href", "#").startswith("#")
    assert " ".join(plain(text).split()) in said(tree)


@pytest.mark.parametrize("text", ATTACKS)
def test_an_attack_in_every_field_is_read_as_text(text: str) -> None:
    assert_stays_text(text)


@settings(max_examples=12, deadline=None)
@given(st.text(min_size=1, max_size=60))
def test_any_text_in_every_field_makes_a_sound_page(text: str) -> None:
    assert_stays_text(text)


@settings(max_examples=12, deadline=None)
@given(st.sampled_from(ATTACKS), st.integers(1, 30))
def test_long_attacks_do_not_break_out_either(text: str, times: int) -> None:
    assert_stays_text(text * times)


@given(st.text())
def test_plain_text_is_plain_and_stays_so(text: str) -> None:
    made = plain(text)
    assert plain(made) == made
    assert made.encode("utf-8").decode("utf-8") == made
    assert not set(made) & set(map(chr, [*range(9), *range(0x202A, 0x202F), 0xD800, 0x7F]))


def test_signs_that_turn_a_line_round_are_shown_not_obeyed() -> None:
    assert plain("clear\u202egnippots") == f"clear{SHOWN_AS}gnippots"
    assert all_plain(rich_view(title="a\x00b")).title == f"a{SHOWN_AS}b"
    assert all_plain(rich_view()) == rich_view()
