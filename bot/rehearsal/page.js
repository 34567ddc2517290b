"use strict";

// Three chats side by side. All text goes in by textContent: nothing that people or the bot write
// is ever read as markup.

const WANTED = ["client", "clinician", "admin"];
const EVERY_MS = 1000;
const MINUTE_MS = 60000;

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
  const text = await answer.text();
  let value = {};
  try {
    value = JSON.parse(text);
  } catch {
    value = { error: text };
  }
  if (!answer.ok) {
    throw new Refused(value.error || value.detail || `refused (${answer.status})`);
  }
  return value;
}

function make(tag, className, text) {
  const node = document.createElement(tag);
  if (className) node.className = className;
  if (text !== undefined) node.textContent = text;
  return node;
}

const shown = (iso) => (iso ? iso.slice(0, 16).replace("T", " ") + " UTC" : "nothing");

function tell(text) {
  byId("status").textContent = text;
}

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
    this.index = index;
    this.known = new Map();
    this.select.addEventListener("change", () => this.choose(Number(this.select.value)));
    this.blockButton.addEventListener("click", () => this.block());
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

  choose(person) {
    this.person = person;
    this.known.clear();
    this.list.replaceChildren();
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
      const label = each.label ? `${each.name} (${each.label})` : each.name;
      const option = make("option", "", label);
      option.value = each.id;
      option.selected = each.id === this.person;
      return option;
    });
    const before = Array.from(this.select.options, (each) => each.textContent + each.value).join();
    const after = options.map((each) => each.textContent + each.value).join();
    if (before !== after) this.select.replaceChildren(...options);
    const me = people.find((each) => each.id === this.person);
    if (!me) return;
    this.list.setAttribute("aria-label", `Chat of ${me.name} with the bot`);
    this.node.setAttribute("aria-label", me.name);
    this.blockButton.textContent = me.blocked ? "Unblock the bot" : "Block the bot";
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
    const atEnd = this.list.scrollHeight - this.list.scrollTop - this.list.clientHeight < 40;
    const count = this.known.size;
    for (const message of messages) this.show(message);
    if (atEnd && this.known.size > count) this.list.scrollTop = this.list.scrollHeight;
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
      const focused = old.node.contains(document.activeElement);
      old.node.replaceWith(node);
      if (focused) (node.querySelector("button") || this.list).focus();
    } else {
      this.list.append(node);
    }
    this.known.set(message.message_id, { node, print });
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
    const address = `${this.path}/files/${encodeURIComponent(file.file_id)}`;
    if (file.mime === "image/png" || file.mime === "image/jpeg") {
      const picture = make("img");
      picture.src = address;
      picture.alt = `Picture ${file.name}, described in the message below it`;
      return picture;
    }
    const link = make("a", "words", `${file.kind}: ${file.name}`);
    link.href = address;
    link.download = file.name;
    const line = make("p", "words");
    link.className = "";
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
  const words = [message.from === "bot" ? "Bot" : "Person", shown(message.date)];
  if (message.silent) words.push("silent");
  if (message.edited) words.push("edited");
  if (message.deleted) words.push("deleted");
  return words.join(", ");
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
  if (!byId("to").value) byId("to").value = clock.now.slice(0, 16);
}

async function look() {
  try {
    people = await ask("/people");
    for (const column of columns) column.showPeople();
    await Promise.all([lookAtClock(), ...columns.map((column) => column.look())]);
  } catch (fault) {
    tell(fault instanceof Refused ? fault.message : "The rehearsal does not answer.");
  }
}

async function keepLooking() {
  await look();
  setTimeout(keepLooking, EVERY_MS);
}

const moveTo = (to) => act(`Going to ${shown(to)}`, () => ask("/clock", { to }));

for (const button of document.querySelectorAll("[data-minutes]")) {
  button.addEventListener("click", () => {
    const to = new Date(Date.parse(clock.now) + Number(button.dataset.minutes) * MINUTE_MS);
    moveTo(to.toISOString());
  });
}
byId("to-next").addEventListener("click", () => moveTo(clock.next_due));
byId("to-form").addEventListener("submit", (event) => {
  event.preventDefault();
  moveTo(`${byId("to").value}:00Z`);
});
columns = WANTED.map((_, index) => new Column(index));
keepLooking();
