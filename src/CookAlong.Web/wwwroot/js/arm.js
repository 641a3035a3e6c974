// "Arm this device": browsers play no sound before a touch, and screens sleep. One tap asks for both and plays
// a test, and whoever stands there says that they heard it.

import * as words from "./words.js";

/** @type {AudioContext | null} */
let audio = null;
/** @type {WakeLockSentinel | null} */
let awake = null;

/** Somebody at this screen has said that they heard it: speakers may be off, or far away. */
let heard = false;

const SPEAKS = "cookalong.speaks";

const plays = () => audio?.state === "running";

export const isArmed = () => heard && plays();

export const isAwake = () => awake !== null;

export const canSpeak = "speechSynthesis" in globalThis;

export const speaks = () => canSpeak && localStorage.getItem(SPEAKS) === "yes";

/** Whether calls are spoken as well. @param {boolean} yes */
export function speak(yes) {
  localStorage.setItem(SPEAKS, yes ? "yes" : "no");
  if (yes) speechSynthesis.speak(new SpeechSynthesisUtterance(words.spokenTest));
}

/** Browsers play nothing before a touch: to be called from one. */
export async function unlock() {
  audio ??= new AudioContext();
  await audio.resume();
  return audio;
}

/** Notes of each priority: pitch in Hz, when and for how long in s. Told apart by rhythm as much as by pitch. */
export const TONES = {
  high: { wave: "square", notes: [[988, 0, 0.16], [740, 0.2, 0.16], [988, 0.4, 0.16], [740, 0.6, 0.16], [988, 0.8, 0.3]] },
  medium: { wave: "triangle", notes: [[660, 0, 0.5], [523, 0.55, 0.8]] },
  low: { wave: "sine", notes: [[440, 0, 0.6]] },
};

/** No priority's notes last longer, in ms. */
export const TONES_LAST = 1_400;

/**
 * Rings, and says what about where the person wants that too. Spoken words are never the only sign.
 * @param {"high" | "medium" | "low"} priority @param {string[]} texts
 */
export function sound(priority, texts) {
  // A browser lets no page shake that nobody has touched, and complains of each try.
  if (navigator.userActivation?.hasBeenActive !== false) navigator.vibrate?.(priority === "high" ? [300, 100, 300, 100, 300] : 200);
  if (document.hidden) showElsewhere(texts);
  if (!audio || !plays()) return;
  play(audio, priority);
  if (speaks()) setTimeout(() => texts.forEach((text) => speechSynthesis.speak(new SpeechSynthesisUtterance(text))), TONES_LAST);
}

/** Another app is in front: shown there too, where the person let it. @param {string[]} texts */
async function showElsewhere(texts) {
  if (!("Notification" in globalThis) || Notification.permission !== "granted") return;
  const worker = await navigator.serviceWorker?.getRegistration();
  await worker?.showNotification(texts[0], { body: texts.slice(1).join("\n"), tag: "ringing", data: { run: document.getElementById("live")?.dataset.run } });
}

/** @param {AudioContext} audio @param {"high" | "medium" | "low"} priority */
function play(audio, priority) {
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

/** What the strip says: silent, or playing and not heard yet, or armed. */
const sentence = () =>
  typeof AudioContext === "undefined" ? words.noAudio
    : isArmed() ? words.armed(isAwake())
    : plays() ? words.didYouHear
    : audio ? words.silenced
    : words.notArmed;

/**
 * @param {Element} root where the strip is; it may come and go with the page's parts
 * @param {() => void} changed told when this device can be heard, or cannot any more
 */
export function armable(root, changed) {
  let said = "false false";
  const show = () => {
    const strip = root.querySelector("#arm");
    if (strip) {
      strip.setAttribute("data-armed", isArmed() ? "yes" : plays() ? "asks" : "no");
      write(strip.querySelector("[data-arm]"), isArmed() ? words.test : plays() ? words.again : words.arm);
      write(strip.querySelector("[data-arm-words]"), sentence());
      strip.querySelector("[data-heard]")?.toggleAttribute("hidden", !plays() || heard);
    }
    const now = `${isArmed()} ${isAwake()}`;
    if (now === said) return;
    said = now;
    changed();
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

  const arm = async () => {
    if (typeof AudioContext === "undefined") return;
    (await unlock()).onstatechange = show;
    sound("medium", [words.spokenTest]);
    await stayAwake();
    show();
    if ("Notification" in globalThis && Notification.permission === "default") await Notification.requestPermission();
  };

  root.addEventListener("click", (event) => {
    if (!(event.target instanceof Element)) return;
    if (event.target.closest("[data-arm]")) arm();
    if (event.target.closest("button[data-heard]")) {
      heard = true;
      show();
    }
  });
  document.addEventListener("visibilitychange", stayAwake);
  show();
  return { show };
}

/** @param {Element | null} element @param {string} text */
function write(element, text) {
  if (element && element.textContent !== text) element.textContent = text;
}
