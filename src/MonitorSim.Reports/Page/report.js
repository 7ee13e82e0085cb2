// Drives the scenes of a report: each is a stretch of a replay, cycle by cycle, for one side of one monitor.
// The numbers were computed by the replay; this only shows them.
"use strict";

/** Whole nanoseconds as seconds, without rounding: 2112000000 reads 2.112 s. */
function seconds(nanoseconds) {
  const sign = nanoseconds < 0 ? "-" : "";
  const digits = String(Math.abs(nanoseconds)).padStart(10, "0");
  const fraction = digits.slice(-9).replace(/0+$/, "");
  return sign + digits.slice(0, -9) + (fraction ? "." + fraction : "") + " s";
}

/** What a list of [cycle, value] says at a cycle: the last change up to it. */
function at(changes, k) {
  let low = 0, high = changes.length - 1;
  while (low < high) {
    const middle = (low + high + 1) >> 1;
    if (changes[middle][0] <= k) low = middle; else high = middle - 1;
  }
  return changes[low][1];
}

/** The five links of the chain at a cycle: words, whether the link is on, and how far its clock is (0 to 1). */
function links(data, k) {
  const now = data.time[k];
  const [asked, watching, exceeded] = [data.requestedAt, data.watchingAt, data.exceededAt].map(changes => at(changes, k));
  const tripped = at(data.state, k) === "Tripped";
  const clock = (since, length) => seconds(now - since) + " of " + seconds(length);
  const share = (since, length) => length === 0 ? 1 : Math.min(1, (now - since) / length);
  return {
    request: { on: asked !== null, text: asked === null ? "none" : "since " + seconds(asked) },
    arming: asked === null ? { text: "stands still" }
      : watching !== null ? { on: true, done: 1, text: "done: watching since " + seconds(watching) }
      : { on: true, done: share(asked, data.delay), text: clock(asked, data.delay) },
    measure: data.value[k] === null ? { text: "not compared" }
      : { on: exceeded !== null, text: data.value[k] + " " + (exceeded === null ? "keeps" : data.beyond) + " " + at(data.limit, k) },
    filter: exceeded === null ? { text: "stands still" } : { on: true, done: share(exceeded, data.filter), text: clock(exceeded, data.filter) },
    trip: { on: tripped, text: (tripped ? "tripped" : "no trip") + "; " + data.axis + ": " + at(data.axisState, k) },
  };
}

function drive(scene) {
  const find = selector => scene.querySelector(selector);
  const data = JSON.parse(find("script.data").textContent);
  const [svg, cursor, slider, play, pace, now] = ["svg", ".cursor", "input[type=range]", ".play", ".pace", ".now"].map(find);
  const last = data.time.length - 1;
  let current = data.start, timer = 0;

  function show(k) {
    current = Math.max(0, Math.min(last, k));
    const state = links(data, current);
    for (const box of scene.querySelectorAll("[data-link]")) {
      const link = state[box.dataset.link];
      box.classList.toggle("on", link.on === true);
      box.style.setProperty("--done", link.done ?? 0);
      box.querySelector("dd").textContent = link.text;
    }
    cursor.querySelector("path").setAttribute("transform", `translate(${data.x[current]} 0)`);
    const dot = cursor.querySelector("circle");
    dot.setAttribute("cx", data.x[current]);
    dot.setAttribute("cy", data.y[current]);
    dot.style.display = data.value[current] === null ? "none" : "";
    slider.value = current;
    const said = `cycle ${data.first + current}, ${seconds(data.time[current])}`;
    slider.setAttribute("aria-valuetext", `${said}: ${state.measure.text}; ${state.trip.text}`);
    now.textContent = said;
  }

  function pause() {
    clearInterval(timer);
    timer = 0;
    play.textContent = "Play";
    // Read out where it stopped, but not every cycle on the way.
    now.setAttribute("aria-live", "polite");
  }

  function start() {
    if (current === last) show(0);
    now.setAttribute("aria-live", "off");
    play.textContent = "Pause";
    timer = setInterval(() => current === last ? pause() : show(current + 1), 1000 / Number(pace.value));
  }

  function move(k) {
    pause();
    show(k);
  }

  /** The cycle whose place is nearest to the pointer. */
  function under(event) {
    const box = svg.getBoundingClientRect();
    const x = (event.clientX - box.left) / box.width * svg.viewBox.baseVal.width;
    const after = data.x.findIndex(place => place >= x);
    if (after <= 0) return after < 0 ? last : 0;
    return data.x[after] - x < x - data.x[after - 1] ? after : after - 1;
  }

  play.addEventListener("click", () => timer ? pause() : start());
  pace.addEventListener("change", () => { if (timer) { pause(); start(); } });
  find(".back").addEventListener("click", () => move(current - 1));
  find(".step").addEventListener("click", () => move(current + 1));
  find(".home").addEventListener("click", () => move(data.start));
  slider.addEventListener("input", () => move(Number(slider.value)));
  svg.addEventListener("pointerdown", event => { svg.setPointerCapture(event.pointerId); move(under(event)); });
  svg.addEventListener("pointermove", event => { if (svg.hasPointerCapture(event.pointerId)) move(under(event)); });

  cursor.removeAttribute("hidden");
  find(".controls").hidden = false;
  scene.classList.add("drives");
  show(data.start);
}

document.querySelectorAll(".scene").forEach(drive);
