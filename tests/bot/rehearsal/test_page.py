"""The rehearsal's page in a real browser: keyboard alone, narrow, readable, nothing from elsewhere."""

import os
import re
import shutil
from collections.abc import AsyncIterator
from datetime import datetime, timedelta
from typing import Any

import httpx
import pytest
from playwright.async_api import Page, async_playwright, expect
from starlette.applications import Starlette
from starlette.requests import Request
from starlette.responses import JSONResponse, Response
from starlette.routing import Route

from bot.rehearsal import people
from bot.rehearsal.people_routes import iso
from bot.rehearsal.server import create_app
from bot.rehearsal.serving import serving
from bot.rehearsal.world import World

from .conftest import PLAIN, Clock

pytestmark = pytest.mark.browser

# Contrast by WCAG 2.2 (memory: relative luminance, (L1 + 0.05) / (L2 + 0.05)); the page's goal is
# 4.5:1 for every text. Gives the texts below it.
FAINT = """() => {
  const part = (v) => (v /= 255) <= 0.04045 ? v / 12.92 : ((v + 0.055) / 1.055) ** 2.4;
  const rgb = (css) => css.match(/[0-9.]+/g).map(Number);
  const light = ([r, g, b]) => 0.2126 * part(r) + 0.7152 * part(g) + 0.0722 * part(b);
  const ground = (node) => {
    for (let each = node; each; each = each.parentElement) {
      const colour = rgb(getComputedStyle(each).backgroundColor);
      if (colour.length === 3 || colour[3] === 1) return colour;
    }
    return [255, 255, 255];
  };
  const faint = [];
  for (const node of document.querySelectorAll("body *")) {
    const own = Array.from(node.childNodes).some((n) => n.nodeType === 3 && n.data.trim());
    if (!own || !node.offsetParent) continue;
    const one = light(rgb(getComputedStyle(node).color));
    const two = light(ground(node));
    const ratio = (Math.max(one, two) + 0.05) / (Math.min(one, two) + 0.05);
    if (ratio < 4.5) faint.push([node.textContent, ratio]);
  }
  return faint;
}"""
NARROW = 961  # CSS pixels from which chats stand side by side (ours)
TOO_WIDE = "() => document.documentElement.scrollWidth - document.documentElement.clientWidth"


class Show:
    """A small invented practice, its page, and what the browser complained about."""

    def __init__(self, world: World, url: str, page: Page, http: httpx.AsyncClient) -> None:
        self.world, self.url, self.page, self.http = world, url, page, http
        self.complaints: list[str] = []
        self.asked_for: list[str] = []
        page.on("console", lambda each: self.complaints.append(each.text))
        page.on("pageerror", lambda each: self.complaints.append(str(each)))
        page.on("dialog", lambda each: self.complaints.append(each.message))
        page.on("request", lambda each: self.asked_for.append(each.url))

    async def say(self, method: str, **fields: Any) -> None:
        answer = await self.http.post(f"/bot{self.world.token}/{method}", json=fields)
        assert answer.is_success, answer.text


def chromium() -> str:
    """The browser's path; without one the test is skipped, or fails where it is required."""
    for name in ("chromium", "chromium-browser", "google-chrome"):
        found = shutil.which(name)
        if found:
            return found
    required = os.environ.get("BOUTWISE_REQUIRE", "")  # noqa: TID251 - a switch of the test run
    reason = "the page is not tested: no Chromium on the path"
    if "browser" in required.split(","):
        pytest.fail(reason)
    pytest.skip(reason)


def clock_app(clock: Clock) -> Starlette:
    """A clock with something due every two hours."""

    async def endpoint(request: Request) -> Response:
        if request.method == "POST":
            wanted = datetime.fromisoformat((await request.json())["to"])
            if wanted < clock.now:
                return JSONResponse({"error": "time does not go back"}, 409)
            clock.now = wanted
        due = clock.now + timedelta(hours=2)
        return JSONResponse({"now": iso(clock.now), "sent": 0, "waiting": 0, "next_due": iso(due)})

    return Starlette(routes=[Route("/clock", endpoint, methods=["GET", "POST"])])


@pytest.fixture
async def show(clock: Clock) -> AsyncIterator[Show]:
    path = chromium()
    world = World(clock)
    for name, label in (("Ada", "admin"), ("Dana", "clinician"), ("Ann", "client")):
        person_id = world.add_person(f"{name} Invented", label=label)
        people.say(world, person_id, "/start CODE")
    async with (
        serving(create_app(world, clock=clock_app(clock))) as url,
        httpx.AsyncClient(base_url=url, **PLAIN) as http,
        async_playwright() as playwright,
    ):
        browser = await playwright.chromium.launch(executable_path=path, args=["--no-sandbox"])
        try:
            yield Show(world, url, await browser.new_page(), http)
        finally:
            await browser.close()


def ann(show: Show) -> int:
    return next(each.id for each in show.world.people.values() if each.label == "client")


async def test_a_conversation_is_led_with_the_keyboard_alone(show: Show) -> None:
    markup = {"inline_keyboard": [[{"text": "Did all 10", "callback_data": "d:1"}]]}
    await show.say("sendMessage", chat_id=ann(show), text="10 heel drops", reply_markup=markup)
    await show.page.goto(show.url)
    column = show.page.get_by_role("region", name="Ann Invented")
    await expect(column.get_by_text("10 heel drops")).to_be_visible()
    await column.get_by_role("button", name="Did all 10").focus()
    await show.page.keyboard.press("Enter")
    await expect(column.get_by_text("Pressed, not answered yet.")).to_be_visible()
    await show.page.keyboard.press("Tab")
    await expect(column.get_by_label("Message")).to_be_focused()
    await show.page.keyboard.type("12 of them")
    await show.page.keyboard.press("Enter")
    await expect(column.get_by_text("12 of them")).to_be_visible()
    kinds = [each.method for each in show.world.log if each.who == "person"][-2:]
    assert kinds == ["callback_query", "message"]
    assert show.complaints == []


async def test_client_clinician_and_admin_stand_side_by_side(show: Show) -> None:
    await show.page.goto(show.url)
    chosen = show.page.get_by_label("Person")
    await expect(chosen).to_have_count(3)
    for index, name in enumerate(["Ann Invented (client)", "Dana Invented", "Ada Invented"]):
        await expect(chosen.nth(index).locator("option:checked")).to_contain_text(name)
    await chosen.nth(0).select_option("Dana Invented (clinician)")
    await expect(show.page.get_by_role("region", name="Dana Invented")).to_have_count(2)


async def test_words_are_never_read_as_markup(show: Show) -> None:
    evil = "<img src=x onerror=alert(1)><script>alert(2)</script>"
    people.say(show.world, ann(show), evil)
    markup = {"inline_keyboard": [[{"text": "<b>bold</b>", "callback_data": "x"}]]}
    await show.say("sendMessage", chat_id=ann(show), text=evil, reply_markup=markup)
    show.world.add_person(evil)
    await show.page.goto(show.url)
    await expect(show.page.get_by_text(evil)).to_have_count(2 + 3)  # bubbles, and each list's name
    await expect(show.page.get_by_role("button", name="<b>bold</b>")).to_be_visible()
    assert await show.page.locator("#columns img").count() == 0
    assert show.complaints == []


async def test_nothing_is_fetched_from_elsewhere(show: Show) -> None:
    people.send_file(show.world, ann(show), "photo", "foot.png")
    await show.page.goto(show.url)
    await expect(show.page.locator("img")).to_be_visible()
    assert {re.sub(r"^(https?://[^/]+).*", r"\1", each) for each in show.asked_for} == {show.url}
    assert show.complaints == []


async def test_a_picture_opens_at_its_full_size_and_a_file_is_offered_by_its_name(
    show: Show,
) -> None:
    people.send_file(show.world, ann(show), "photo", "foot.png")
    people.send_file(show.world, ann(show), "document", "notes.csv")
    await show.page.goto(show.url)
    picture = show.page.get_by_role("link", name="Picture foot.png")
    await expect(picture.locator("img")).to_be_visible()
    async with show.page.context.expect_page() as opening:
        await picture.click()
    assert "/files/" in (await opening.value).url
    async with show.page.expect_download() as loading:
        await show.page.get_by_role("link", name="document: notes.csv").click()
    assert (await loading.value).suggested_filename == "notes.csv"
    assert show.complaints == []


async def test_the_clock_is_shown_in_utc_and_moved(show: Show, clock: Clock) -> None:
    await show.page.goto(show.url)
    now = show.page.locator("#now")
    await expect(now).to_have_text("Mon 2027-03-08 05:00 UTC")
    for button, then in [
        ("+5 min", "Mon 2027-03-08 05:05 UTC"),
        ("+30 min", "Mon 2027-03-08 05:35 UTC"),
        ("+2 h", "Mon 2027-03-08 07:35 UTC"),
        ("To next due", "Mon 2027-03-08 09:35 UTC"),
    ]:
        await show.page.get_by_role("button", name=button, exact=True).click()
        await expect(now).to_have_text(then)
    await show.page.get_by_label("To (UTC)").fill("2027-03-07T12:00")
    await show.page.get_by_role("button", name="Go").click()
    await expect(show.page.locator("#status")).to_have_text("Not done: time does not go back")
    await show.page.get_by_label("To (UTC)").fill("2027-03-09T12:00")
    await show.page.get_by_role("button", name="Go").click()
    await expect(now).to_have_text("Tue 2027-03-09 12:00 UTC")
    assert iso(clock.now) == "2027-03-09T12:00:00Z"


async def test_it_says_that_nothing_is_real_and_that_it_is_no_advice(show: Show) -> None:
    await show.page.goto(show.url)
    heading = show.page.get_by_role("heading", level=1)
    await expect(heading).to_have_text("Rehearsal: invented people, nothing here is real")
    await expect(show.page.get_by_text("Not medical advice")).to_be_visible()


async def test_every_text_has_contrast_and_every_control_a_name(show: Show) -> None:
    markup = {"inline_keyboard": [[{"text": "Skip", "callback_data": "s"}]]}
    await show.say("sendMessage", chat_id=ann(show), text="x", reply_markup=markup)
    people.send_file(show.world, ann(show), "document", "notes.txt")
    await show.page.goto(show.url)
    await expect(show.page.get_by_role("button", name="Skip")).to_be_visible()
    assert await show.page.evaluate(FAINT) == []
    tree = await show.page.locator("body").aria_snapshot()
    controls = re.findall(r"- (?:button|textbox|combobox|link|log|region|img)(.*)", tree)
    assert len(controls) > 15
    assert [each for each in controls if not each.strip().startswith('"')] == []
    await expect(show.page.locator("[role=log][aria-live=polite]")).to_have_count(3)


# 320 CSS pixels is 1280 at 400 % zoom (WCAG 2.2, 1.4.10, memory); 640 is 1280 at 200 %.
@pytest.mark.parametrize("width", [320, 390, 640, 1280])
async def test_nothing_is_cut_off_at_phone_width_or_zoomed(show: Show, width: int) -> None:
    people.say(show.world, ann(show), "x" * 300)
    await show.page.set_viewport_size({"width": width, "height": 800})
    await show.page.goto(show.url)
    await expect(show.page.get_by_text("x" * 300)).to_be_visible()
    assert await show.page.evaluate(TOO_WIDE) == 0
    chats = show.page.locator(".column:visible")
    await expect(chats).to_have_count(1 if width < NARROW else 3)


async def test_as_many_chats_are_shown_as_one_chooses(show: Show) -> None:
    chats = show.page.locator(".column:visible")
    await show.page.set_viewport_size({"width": 1280, "height": 800})
    await show.page.goto(show.url)
    await expect(chats).to_have_count(3)
    assert len({box["y"] for each in await chats.all() if (box := await each.bounding_box())}) == 1
    await show.page.get_by_label("Chats shown").select_option("1")
    await expect(chats).to_have_count(1)
    await show.page.set_viewport_size({"width": 390, "height": 844})
    await show.page.get_by_label("Chats shown").select_option("3")
    await expect(chats).to_have_count(3)
    assert len({box["x"] for each in await chats.all() if (box := await each.bounding_box())}) == 1
