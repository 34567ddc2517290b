"use strict";

// Three chats side by side. All text goes in by textContent: nothing that people or the bot write
// is ever read as markup.

const WANTED = ["client", "clinician", "admin"];
const EVERY_MS = 1000;
const MINUTE_MS = 60000;
const NARROW = "(max-width: 60rem)";
const WEEKDAYS = ["Sun", "Mon", "Tue", "Wed", "Thu", "Fri", "Sat"];

const byId = (id) => document.getElementById(id);
let clock = null;
let clockMissing = false;
let people = [];
let columns = [];

class Refused extends Error {}

async function ask(path, body) {
  const options = body === undefined ? {} : {
    method: "POST",
    headers: { "Content-Type": "application/json" },
    body: JSON.stringify(body),
  };
  const answer = await fetch(path, options);
  const value = await answer.json().catch(() => ({}));
  if (!answer.ok) throw new Refused(value.error || `refused (${answer.status})`);
  return value;
}

function make(tag, className, text) {
  const node = document.createElement(tag);
  if (className) node.className = className;
  if (text !== undefined) node.textContent = text;
  return node;
}

// An instant as "Mon 2027-03-08 05:00", in UTC like everything on the page.
const moment = (iso) => `${WEEKDAYS[new Date(iso).getUTCDay()]} ${iso.slice(0, 16).replace("T", " ")}`;
const shown = (iso) => (iso ? `${moment(iso)} UTC` : "nothing");

const tell = (text) => (byId("status").textContent = text);

// Runs what a control does, says what went wrong, and looks again.
async function act(doing, deed) {
  tell(doing);
  try {
    await deed();
    tell("");
  } catch (fault) {
    tell(fault instanceof Refused ? `Not done: ${fault.message}` : "The rehearsal does not answer.");
  }
  await look();
}

class Column {
  constructor(index) {
    const copy = byId("column").content.cloneNode(true);
    this.node = copy.querySelector(".column");
    this.select = copy.querySelector("select");
    this.list = copy.querySelector(".messages");
    this.notice = copy.querySelector(".notice");
    this.blockButton = copy.querySelector(".block");
    this.newest = copy.querySelector(".newest");
    this.index = index;
    this.known = new Map();
    this.atEnd = true; // kept, as the list also changes its height without being scrolled
    this.top = 0;
    this.select.addEventListener("change", () => this.choose(Number(this.select.value)));
    this.blockButton.addEventListener("click", () => this.block());
    this.newest.addEventListener("click", () => {
      this.list.focus();
      this.toNewest();
    });
    this.list.addEventListener("scroll", () => this.scrolled());
    // A picture that has loaded, and a row that came below the list, leave less room than before.
    this.list.addEventListener("load", () => this.stay(), true);
    new ResizeObserver(() => this.stay()).observe(this.list);
    const form = copy.querySelector("form");
    const box = form.querySelector("textarea");
    form.addEventListener("submit", (event) => {
      event.preventDefault();
      this.say(box);
    });
    box.addEventListener("keydown", (event) => {
      if (event.key === "Enter" && !event.shiftKey && !event.isComposing) {
        event.preventDefault();
        form.requestSubmit();
      }
    });
    byId("columns").append(copy);
  }

  get path() {
    return `/people/${this.person}`;
  }

  scrolled() {
    const end = this.list.scrollHeight - this.list.scrollTop - this.list.clientHeight < 40;
    if (end) this.newest.hidden = true;
    // Only going up is somebody's wish: what grows below has not been scrolled away from.
    if (end || this.list.scrollTop < this.top) this.atEnd = end;
    this.top = this.list.scrollTop;
  }

  stay() {
    if (this.atEnd) this.toNewest();
  }

  toNewest() {
    this.list.scrollTop = this.list.scrollHeight;
  }

  choose(person) {
    this.person = person;
    this.known.clear();
    this.list.replaceChildren();
    this.atEnd = true;
    look();
  }

  say(box) {
    const text = box.value;
    if (!text.trim()) return;
    act("Sending", async () => {
      await ask(`${this.path}/text`, { text });
      box.value = "";
    });
  }

  block() {
    const on = !people.find((each) => each.id === this.person).blocked;
    act(on ? "Blocking" : "Unblocking", () => ask(`${this.path}/block`, { on }));
  }

  showPeople() {
    if (this.person === undefined) this.person = firstFor(this.index);
    const options = people.map((each) => {
      const option = make("option", "", each.label ? `${each.name} (${each.label})` : each.name);
      option.value = each.id;
      option.selected = each.id === this.person;
      return option;
    });
    const print = (list) => Array.from(list, (each) => each.textContent + each.value).join();
    if (print(this.select.options) !== print(options)) this.select.replaceChildren(...options);
    const me = people.find((each) => each.id === this.person);
    if (!me) return;
    this.list.setAttribute("aria-label", `Chat of ${me.name} with the bot`);
    this.node.setAttribute("aria-label", me.name);
    this.blockButton.textContent = me.blocked ? "Unblock bot" : "Block bot";
  }

  async look() {
    const person = this.person;
    if (person === undefined) return;
    const [messages, notices] = await Promise.all([
      ask(`${this.path}/chat`),
      ask(`${this.path}/notices`),
    ]);
    if (person !== this.person) return;
    this.showNotice(notices.at(-1));
    const count = this.known.size;
    for (const message of messages) this.show(message);
    this.stay();
    if (!this.atEnd && this.known.size > count) this.newest.hidden = false;
  }

  showNotice(last) {
    let text = "";
    if (last && !last.answered) text = "Pressed, not answered yet.";
    else if (last && last.text) text = `Popped up: ${last.text}`;
    if (this.notice.textContent !== text) this.notice.textContent = text;
  }

  // Only what changed is built again, so that focus and scrolling stay where they are.
  show(message) {
    const print = JSON.stringify(message);
    const old = this.known.get(message.message_id);
    if (old && old.print === print) return;
    const node = this.bubble(message);
    if (old) {
      const label = old.node.contains(document.activeElement) && document.activeElement.textContent;
      old.node.replaceWith(node);
      if (label !== false) this.focusAgain(node, label);
    } else {
      this.list.append(node);
    }
    this.known.set(message.message_id, { node, print });
  }

  // Never to another button: a second Enter would press what nobody chose.
  focusAgain(node, label) {
    const same = Array.from(node.querySelectorAll("button")).find((each) => each.textContent === label);
    (same || this.list).focus({ preventScroll: true });
  }

  bubble(message) {
    const item = make("li", message.from);
    if (message.deleted) item.classList.add("deleted");
    item.append(make("p", "about", about(message)));
    for (const file of message.files) item.append(this.file(file));
    if (message.text) item.append(make("p", "words", message.text));
    for (const row of message.buttons) {
      const line = make("div", "row");
      for (const button of row) line.append(this.button(message, button));
      item.append(line);
    }
    return item;
  }

  file(file) {
    const link = make("a");
    link.href = `${this.path}/files/${encodeURIComponent(file.file_id)}`;
    if (file.mime === "image/png" || file.mime === "image/jpeg") {
      const alt = `Picture ${file.name}, described in the message below it`;
      link.append(Object.assign(make("img"), { src: link.href, alt }));
      link.target = "_blank"; // at its full size
      return link;
    }
    Object.assign(link, { textContent: `${file.kind}: ${file.name}`, download: file.name });
    const line = make("p", "words");
    line.append(link);
    return line;
  }

  button(message, button) {
    const node = make("button", "", button.label);
    node.type = "button";
    const body = { message_id: message.message_id, button: button.data ?? button.label };
    node.addEventListener("click", () => act("Pressing", () => ask(`${this.path}/press`, body)));
    return node;
  }
}

function about(message) {
  const marks = ["silent", "edited", "deleted"].filter((mark) => message[mark]);
  return [message.from === "bot" ? "Bot" : "Person", moment(message.date), ...marks].join(", ");
}

function firstFor(index) {
  const fitting = people.find((each) => each.label === WANTED[index]);
  return (fitting || people[index] || people[0])?.id;
}

async function lookAtClock() {
  if (clockMissing) return;
  try {
    clock = await ask("/clock");
  } catch (fault) {
    if (!(fault instanceof Refused)) throw fault;
    clockMissing = true;
    return;
  }
  byId("clock").hidden = false;
  byId("now").textContent = shown(clock.now);
  byId("next-due").textContent = shown(clock.next_due);
  byId("to-next").disabled = !clock.next_due;
  const to = byId("to");
  if (document.activeElement !== to && to.value < clock.now.slice(0, 16)) to.value = clock.now.slice(0, 16);
}

async function look() {
  try {
    people = await ask("/people");
    for (const column of columns) column.showPeople();
    const seen = columns.filter((column) => !column.node.hidden);
    await Promise.all([lookAtClock(), ...seen.map((column) => column.look())]);
  } catch (fault) {
    tell(fault instanceof Refused ? fault.message : "The rehearsal does not answer.");
  }
}

async function keepLooking() {
  await look();
  setTimeout(keepLooking, EVERY_MS);
}

// One move after the other, each from where the one before has ended: quick presses add up.
let moving = Promise.resolve();
function move(target) {
  moving = moving.then(() => {
    const to = target();
    return act(`Going to ${shown(to)}`, () => ask("/clock", { to }));
  });
}

for (const button of document.querySelectorAll("[data-minutes]")) {
  const step = Number(button.dataset.minutes) * MINUTE_MS;
  button.addEventListener("click", () => move(() => new Date(Date.parse(clock.now) + step).toISOString()));
}
byId("to-next").addEventListener("click", () => move(() => clock.next_due || clock.now));
byId("to-form").addEventListener("submit", (event) => {
  event.preventDefault();
  const to = `${byId("to").value}:00Z`;
  move(() => to);
});

function showChats() {
  const count = Number(byId("shown").value);
  byId("columns").dataset.shown = count;
  for (const column of columns) column.node.hidden = column.index >= count;
  look();
}

columns = WANTED.map((_, index) => new Column(index));
byId("shown").value = window.matchMedia(NARROW).matches ? "1" : "3";
byId("shown").addEventListener("change", showChats);
showChats();
keepLooking();
