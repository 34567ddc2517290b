"""The rehearsal's page before the real bot: answered by keyboard alone, its clock moved by the buttons."""

from collections.abc import AsyncIterator
from datetime import UTC, datetime
from pathlib import Path

import pytest
from playwright.async_api import Locator, Page, async_playwright, expect

from bot.rehearsal import story
from bot.rehearsal.stage import Stage, stage

from .test_page import chromium

pytestmark = pytest.mark.browser
PROMPT = "Now: 10 gentle heel drops. Done today: 0 of 40."


@pytest.fixture
async def theatre(tmp_path: Path) -> AsyncIterator[Stage]:
    """An open practice whose only client, Ann, has a plan for today; the clock stands before it."""
    async with stage(f"sqlite:///{tmp_path}/page.db", story.START) as theatre:
        who = await story.open_practice(theatre)
        await story.enrol(theatre, "Ann", who["Dana"])
        yield theatre


@pytest.fixture
async def page(theatre: Stage) -> AsyncIterator[Page]:
    path = chromium()
    async with async_playwright() as playwright:
        browser = await playwright.chromium.launch(executable_path=path, args=["--no-sandbox"])
        try:
            page = await browser.new_page(viewport={"width": 1280, "height": 800})
            await page.goto(theatre.address)
            yield page
        finally:
            await browser.close()


def account(theatre: Stage) -> int:
    """Ann's."""
    return next(each.id for each in theatre.world.people.values() if each.name == "Ann")


async def tab_to(page: Page, wanted: Locator) -> None:
    """Tab on until the control has the focus, as somebody without a mouse does."""
    for _ in range(60):
        await page.keyboard.press("Tab")
        if await wanted.evaluate("each => each === document.activeElement"):
            return
    raise AssertionError("the keyboard does not get there")


async def test_a_prompt_is_answered_with_the_keyboard_alone(theatre: Stage, page: Page) -> None:
    ann = page.get_by_role("region", name="Ann")
    await expect(page.locator("#next-due")).to_contain_text("2027")
    await tab_to(page, page.get_by_role("button", name="+2 h"))
    for hours in ("07:00", "09:00"):
        await page.keyboard.press("Enter")
        await expect(page.locator("#now")).to_have_text(f"Mon 2027-03-08 {hours} UTC")
    await expect(ann.get_by_text(PROMPT)).to_be_visible()
    await tab_to(page, ann.get_by_role("button", name="Did all"))
    await page.keyboard.press("Enter")
    await expect(ann.get_by_text("Done today: 10 of 40.")).to_be_visible()
    await expect(ann.get_by_text(PROMPT)).to_have_count(0)
    await expect(ann.get_by_role("log")).to_be_focused()  # and no other button, for a second Enter
    await tab_to(page, ann.get_by_label("Message"))
    await page.keyboard.type("undo")
    await page.keyboard.press("Enter")
    await expect(ann.get_by_text("Taken back: 10 gentle heel drops.")).to_be_visible()
    assert theatre.last(account(theatre)).startswith("Taken back")


async def test_the_clocks_buttons_move_the_bots_day(theatre: Stage, page: Page) -> None:
    now, due = page.locator("#now"), page.locator("#next-due")
    await expect(now).to_have_text("Mon 2027-03-08 05:00 UTC")
    for button, then in [("+5 min", "05:05"), ("+30 min", "05:35"), ("+2 h", "07:35")]:
        await page.get_by_role("button", name=button, exact=True).click()
        await expect(now).to_have_text(f"Mon 2027-03-08 {then} UTC")
    await expect(due).to_have_text("Mon 2027-03-08 08:00 UTC")
    await page.get_by_role("button", name="To next due").click()
    await expect(now).to_have_text("Mon 2027-03-08 08:00 UTC")
    await expect(page.get_by_text(PROMPT)).to_be_visible()
    await page.get_by_role("button", name="+1 day").click()
    await expect(now).to_have_text("Tue 2027-03-09 08:00 UTC")
    assert theatre.now == datetime(2027, 3, 9, 8, tzinfo=UTC)


async def test_the_newest_message_is_in_sight_and_stays_so(theatre: Stage, page: Page) -> None:
    ann = page.get_by_role("region", name="Ann")
    await expect(ann.get_by_text("New plan from Dana")).to_be_in_viewport()
    await page.get_by_role("button", name="+2 h").click()
    await page.get_by_role("button", name="+2 h").click()
    await expect(ann.get_by_role("button", name="Something hurts")).to_be_in_viewport()
    await ann.get_by_role("button", name="Something hurts").click()
    await expect(ann.get_by_role("button", name="I tapped this by mistake")).to_be_in_viewport()
    await ann.get_by_role("log").evaluate("list => { list.scrollTop = 0; }")
    await theatre.say(account(theatre), "help")
    newest = ann.get_by_role("button", name="Down to the newest")
    await expect(newest).to_be_visible()
    await newest.click()
    await expect(newest).to_be_hidden()
    # A picture grows the list after it was scrolled to its end.
    await theatre.say(account(theatre), "/week")
    await expect(ann.get_by_text("Your week, Mon 8 March to Sun 14 March.")).to_be_in_viewport()
    await expect(newest).to_be_hidden()
