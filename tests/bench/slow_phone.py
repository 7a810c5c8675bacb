"""A phone four times slower than this machine, on a line of a given kind, and what its browser says of what it did."""

from __future__ import annotations

import json
from collections import Counter
from collections.abc import Callable
from contextlib import suppress
from dataclasses import dataclass
from typing import Any

from playwright.sync_api import Browser, Locator, Page
from playwright.sync_api import TimeoutError as GaveUp

from tests.journeys.running import unhurried

SLOWER = 4
SCREEN: Any = {"width": 412, "height": 915}
# What is usual for a slow line of the fourth generation: 150 ms there and back, 1.6 Mbit/s down, 750 kbit/s up.
SLOW_LINE = {"latency": 150, "downloadThroughput": 1_600_000 / 8, "uploadThroughput": 750_000 / 8}
PATIENCE_MS = 60_000
# Of the kinds of things in the browser's picture of its memory, those that scripts make.
HELD = ("object", "closure", "array", "string", "concatenated string", "sliced string", "regexp", "number", "bigint")
TRACED = ["toplevel", "devtools.timeline", "disabled-by-default-devtools.timeline"]

# Keeps what the browser tells of touches, and the moment at which what is waited for has been drawn: the frame after it
# stands in the page. Read and set from outside.
WATCHES = """(() => {
  const phone = { touches: [], wanted: null, at: null, down: null }
  window.phone = phone
  const watch = new PerformanceObserver((list) => phone.touches.push(...list.getEntries().map((e) => e.duration)))
  watch.observe({ type: 'event', buffered: true, durationThreshold: 16 })
  addEventListener('pointerdown', (event) => { phone.down = event.timeStamp }, { capture: true })
  const there = (path) => document.evaluate(path, document, null, XPathResult.BOOLEAN_TYPE, null).booleanValue
  const look = () => {
    if (phone.at === null && phone.wanted !== null && there(phone.wanted))
      requestAnimationFrame(() => setTimeout(() => { phone.at ??= performance.now() }))
  }
  const all = { subtree: true, childList: true, attributes: true, characterData: true }
  new MutationObserver(look).observe(document, all)
  phone.want = (path) => { phone.wanted = path; phone.at = null; look() }
})()"""


@dataclass(frozen=True, slots=True)
class Opened:
    """Milliseconds since the page was asked for, until anything and until what is wanted was drawn."""

    painted_ms: float
    shown_ms: float


@dataclass(frozen=True, slots=True)
class Touched:
    """Milliseconds since the finger came down."""

    drawn_ms: float
    """Until the screen was drawn next, as the browser tells it, in steps of eight."""
    shown_ms: float
    """Until what the touch asks for was drawn."""


class SlowPhone:
    """A page on it. What is wanted is told as an XPath."""

    def __init__(self, browser: Browser, url: str, cookies: list[Any] | None = None) -> None:
        self.browser = browser
        self.context = browser.new_context(
            base_url=url, viewport=SCREEN, has_touch=True, is_mobile=True, device_scale_factor=2, locale="en-GB"
        )
        self.context.set_default_timeout(PATIENCE_MS)
        self.context.add_cookies(cookies or [])
        self.context.add_init_script(WATCHES)
        self.page: Page = unhurried(self.context.new_page())
        self.line = self.context.new_cdp_session(self.page)
        self.line.send("Page.enable")
        self.line.send("Emulation.setCPUThrottlingRate", {"rate": SLOWER})

    def on_slow_line(self) -> None:
        self.line.send("Network.enable")
        self.line.send("Network.emulateNetworkConditions", {"offline": False, **SLOW_LINE})

    def opens(self, path: str, want: str) -> Opened:
        """An address typed in."""
        wants = self.line.send("Page.addScriptToEvaluateOnNewDocument", {"source": f"phone.want({json.dumps(want)})"})
        self.page.goto(path, wait_until="commit")
        shown_ms = self._shown_ms()
        self.line.send("Page.removeScriptToEvaluateOnNewDocument", {"identifier": wants["identifier"]})
        self.quiet()
        painted_ms = self.page.evaluate("() => performance.getEntriesByName('first-contentful-paint')[0]?.startTime")
        return Opened(painted_ms or shown_ms, shown_ms)

    def touches(self, at: Locator, want: str) -> Touched:
        return self.does(at.tap, want)

    def does(self, touch: Callable[[], object], want: str) -> Touched:
        self.quiet()
        self.page.evaluate("(want) => { phone.touches.length = 0; phone.want(want) }", want)
        touch()
        shown_ms = self._shown_ms() - self.page.evaluate("() => phone.down")
        self.quiet()
        return Touched(self.page.evaluate("() => Math.max(0, ...phone.touches)"), shown_ms)

    def longest_task_ms(self, does: Callable[[], object]) -> float:
        """Of the page's main thread, in its own processor time at full speed, multiplied: other work on the machine
        does not count, and a phone's slowness is made up by waiting, which it would cut short."""
        self.quiet()
        self.line.send("Emulation.setCPUThrottlingRate", {"rate": 1})
        self.browser.start_tracing(page=self.page, categories=TRACED)
        does()
        self.quiet()
        events: list[dict[str, Any]] = json.loads(self.browser.stop_tracing())["traceEvents"]
        threads = Counter((event["pid"], event["tid"]) for event in events if event["name"] == "FunctionCall")
        ((main, _),) = threads.most_common(1)
        tasks = [event for event in events if (event["pid"], event["tid"]) == main and event["name"] == "RunTask"]
        self.line.send("Emulation.setCPUThrottlingRate", {"rate": SLOWER})
        return SLOWER * max(float(task.get("tdur", 0)) / 1000 for task in tasks)

    def quiet(self) -> None:
        """Nothing is under way any more."""
        with suppress(GaveUp):
            self.page.wait_for_load_state("networkidle", timeout=3000)
        self.page.evaluate("() => new Promise((go) => requestIdleCallback(() => setTimeout(go, 200)))")

    def heap_kb(self) -> float:
        """What the page's scripts hold, by the browser's own picture of it: values, functions and text. What it keeps
        for itself grows for a while whatever they do: code it has made faster, entries of its timeline."""
        chunks: list[str] = []

        def keep(event: dict[str, str]) -> None:
            chunks.append(event["chunk"])

        self.line.on("HeapProfiler.addHeapSnapshotChunk", keep)
        self.line.send("HeapProfiler.takeHeapSnapshot")
        self.line.remove_listener("HeapProfiler.addHeapSnapshotChunk", keep)
        picture = json.loads("".join(chunks))
        meta, nodes = picture["snapshot"]["meta"], picture["nodes"]
        fields = meta["node_fields"]
        kinds = meta["node_types"][fields.index("type")]
        each_of = {field: nodes[fields.index(field) :: len(fields)] for field in ("type", "self_size")}
        held = zip(each_of["type"], each_of["self_size"], strict=True)
        return sum(float(size) for kind, size in held if kinds[kind] in HELD) / 1000

    def _shown_ms(self) -> float:
        return float(self.page.wait_for_function("() => window.phone && phone.at").json_value())
