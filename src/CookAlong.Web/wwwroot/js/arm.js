// "Arm this device": browsers play no sound before a touch, and screens sleep. One tap asks for both and plays a test.

import * as words from "./words.js";

/** @type {AudioContext | null} */
let audio = null;
/** @type {WakeLockSentinel | null} */
let awake = null;

const isArmed = () => audio?.state === "running";

/** Notes of each priority: pitch in Hz, when and for how long in s. Told apart by rhythm as much as by pitch. */
const TONES = {
  high: { wave: "square", notes: [[988, 0, 0.16], [740, 0.2, 0.16], [988, 0.4, 0.16], [740, 0.6, 0.16], [988, 0.8, 0.3]] },
  medium: { wave: "triangle", notes: [[660, 0, 0.5], [523, 0.55, 0.8]] },
  low: { wave: "sine", notes: [[440, 0, 0.6]] },
};

/** @param {"high" | "medium" | "low"} priority */
export function sound(priority) {
  navigator.vibrate?.(priority === "high" ? [300, 100, 300, 100, 300] : 200);
  if (!audio || !isArmed()) return;
  const { wave, notes } = TONES[priority];
  for (const [pitch, from, length] of notes) {
    const start = audio.currentTime + from;
    const voice = new OscillatorNode(audio, { type: /** @type {OscillatorType} */ (wave), frequency: pitch });
    const volume = new GainNode(audio, { gain: 0 });
    volume.gain.setValueAtTime(0, start);
    volume.gain.linearRampToValueAtTime(wave === "square" ? 0.35 : 0.7, start + 0.01);
    volume.gain.exponentialRampToValueAtTime(0.001, start + length);
    voice.connect(volume).connect(audio.destination);
    voice.start(start);
    voice.stop(start + length);
  }
}

/** @param {Element} root where the strip is; it may come and go with the page's parts */
export function armable(root) {
  const show = () => {
    const strip = root.querySelector("#arm");
    const button = strip?.querySelector("[data-arm]");
    const said = strip?.querySelector("[data-arm-words]");
    if (!strip || !button || !said) return;
    strip.setAttribute("data-armed", isArmed() ? "yes" : "no");
    write(button, isArmed() ? words.test : words.arm);
    write(said, isArmed() ? words.armed(awake !== null) : typeof AudioContext === "undefined" ? words.noAudio : audio ? words.silenced : words.notArmed);
  };

  const stayAwake = async () => {
    if (!audio || awake || document.visibilityState !== "visible" || !("wakeLock" in navigator)) return;
    try {
      awake = await navigator.wakeLock.request("screen");
      awake.addEventListener("release", () => {
        awake = null;
        show();
      });
    } catch (refused) {
      // Refused on a low battery, say: the strip then tells that the screen may sleep.
      console.info("No wake lock:", refused);
    }
    show();
  };

  root.addEventListener("click", async (event) => {
    if (!(event.target instanceof Element) || !event.target.closest("[data-arm]") || typeof AudioContext === "undefined") return;
    if (!audio) {
      audio = new AudioContext();
      audio.addEventListener("statechange", show);
    }
    await audio.resume();
    sound("medium");
    await stayAwake();
    show();
  });
  document.addEventListener("visibilitychange", stayAwake);
  show();
  return { show };
}

/** @param {Element} element @param {string} text */
function write(element, text) {
  if (element.textContent !== text) element.textContent = text;
}
