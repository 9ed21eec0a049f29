"""A technician's prose becomes HTML that is only text."""

import pytest

from procbuilder.publish.markdown import html

REL = 'rel="noopener noreferrer"'


@pytest.mark.parametrize(
    ("typed", "shown"),
    [
        ("a *little* at a **time**", "<p>a <em>little</em> at a <strong>time</strong></p>\n"),
        ("- top\n- sides", "<ul>\n<li>top</li>\n<li>sides</li>\n</ul>\n"),
        ("3. third\n4. fourth", '<ol start="3">\n<li>third</li>\n<li>fourth</li>\n</ol>\n'),
        ("> quoted", "<blockquote>\n<p>quoted</p>\n</blockquote>\n"),
        ("use `13 mm`", "<p>use <code>13 mm</code></p>\n"),
        ("one  \ntwo", "<p>one<br>\ntwo</p>\n"),
        ("#### Left side", "<p><strong>Left side</strong></p>\n"),
        ("[step](#dust-cap)", f'<p><a href="#dust-cap" {REL}>step</a></p>\n'),
        ("[data](https://example.org/a)", f'<p><a href="https://example.org/a" {REL}>data</a></p>\n'),
        ("15 N·m & <30 N·m", "<p>15 N·m &amp; &lt;30 N·m</p>\n"),
    ],
)
def test_html_commonmark_is_shown(typed: str, shown: str) -> None:
    assert html(typed) == shown


@pytest.mark.parametrize(
    ("typed", "shown"),
    [
        ("<script>alert(1)</script>", "<p>&lt;script&gt;alert(1)&lt;/script&gt;</p>\n"),
        ("<b onclick=go()>x</b>", "<p>&lt;b onclick=go()&gt;x&lt;/b&gt;</p>\n"),
        ("![the cap](cap.jpg)", "<p>the cap</p>\n"),
        ("![<script>](https://example.org/x.png)", "<p>&lt;script&gt;</p>\n"),
        ("[x](javascript:alert(1))", "<p>[x](javascript:alert(1))</p>\n"),
        ("[x](data:text/html,hi)", "<p>[x](data:text/html,hi)</p>\n"),
        ("[x](mailto:a@b.example)", f"<p><a {REL}>x</a></p>\n"),
        ("[x](../other/index.html)", f"<p><a {REL}>x</a></p>\n"),
        ("[x](//example.org/a)", f"<p><a {REL}>x</a></p>\n"),
        ("[x](file:///etc/passwd)", "<p>[x](file:///etc/passwd)</p>\n"),
        ('```" onload="x\ncode\n```', "<pre><code>code\n</code></pre>\n"),
    ],
)
def test_html_nothing_runs_loads_or_leads_elsewhere(typed: str, shown: str) -> None:
    assert html(typed) == shown
