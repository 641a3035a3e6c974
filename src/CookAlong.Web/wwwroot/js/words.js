// Every sentence that the script has to say by itself, because the server may be away when it is said.

/** @param {string} time hh:mm:ss */
export const cutOff = (time) => `Not connected since ${time}. The clocks go on; taps are kept and sent when the server is back.`;

/** The server has said so itself before it went. @param {string} time hh:mm:ss */
export const restarting = (time) => `The kitchen’s server is restarting (${time}). There is nothing to do: the clocks go on, taps are kept, and this screen comes back by itself.`;

/** To those at the table, who have nothing to tap. @param {string} time hh:mm:ss */
export const cutOffAtTable = (time) => `Not connected since ${time}. This is what the kitchen said last; it is put right as soon as the kitchen is heard again.`;

/**
 * A span to the nearest five minutes, from four hours on to the nearest hour, in the words of Words.Roughly on the server: "in about 20 minutes".
 * @param {number} left ms
 */
export function roughly(left) {
  if (left < 8 * 60_000) return "soon";
  const unit = left < 4 * 3_600_000 ? 5 : 60;
  const minutes = unit * Math.round(left / (unit * 60_000));
  const hours = Math.floor(minutes / 60);
  const rest = minutes % 60;
  const spoken = hours === 0 ? "" : hours === 1 && rest === 0 ? "an hour" : hours === 1 ? "1 hour" : `${hours} hours`;
  return `in about ${[spoken, ...(rest === 0 ? [] : [`${rest} minutes`])].filter((one) => one).join(" ")}`;
}

/** @param {string} time hh:mm:ss */
export const shopAlone = (time) => `Not connected since ${time}. Go on shopping; what you tick is kept and sent when the server is back.`;

export const marked = { bought: "Got", cupboard: "At home", open: "Not yet" };

export const added = (/** @type {string} */ text) => `Add: ${text}`;

export const whatItCost = (/** @type {string} */ name) => `What it cost: ${name}`;

/** @param {string} name @param {number | null} price */
export const cost = (name, price) => (price === null ? `No price: ${name}` : `${name} cost ${price.toFixed(2)}`);

export const currency = (/** @type {string} */ code) => (code ? `Currency: ${code}` : "No currency");

export const copied = "The list is copied. Paste it wherever you like.";

export const notCopied = "This browser does not let the page copy. Mark the list and copy it by hand.";

/** The plan is the whole kitchen's: an edit that comes late would change what nobody expects. */
export const planNeedsServer = (/** @type {string} */ label) => `${label}: the server does not answer, and the plan changes only there. This is not kept for later: look at the board when it is back, and tap again.`;

export const understood = "Understood";

export const waiting = (/** @type {string} */ label) => `Waiting to send: ${label}`;

export const refusedByDoor = "This screen is not in this kitchen any more. Ask the host for the code and join again.";

export const putOut = "The host has put this screen out of the kitchen. Ask the host for a new code to come back.";

export const outside = "You are not in the kitchen";

export const joinAgain = "Join again";

export const notUnderstood = "The server did not take that tap. Reload the page and try again.";

export const notArmed = "No sound yet: this screen stays silent when a call is due.";

export const silenced = "Not armed: the browser has stopped this screen’s sound. Tap to arm it again.";

/** @param {boolean} awake whether the screen is kept awake */
export const armed = (awake) =>
  awake ? "Armed: calls sound here, and the screen stays awake." : "Armed while this page is open and the screen is on. Keep the screen awake in the device’s settings.";

export const noAudio = "This browser cannot play sounds. Watch the screen, or arm another device.";

export const arm = "Arm this device";

export const test = "Armed. Play a test";

export const again = "Play it again";

export const didYouHear = "A test call is playing. Turn this device up until you hear it from where you stand.";

export const spokenTest = "This is how a call is spoken.";

/** @param {number} calls how many ring */
export const quiet = (calls) => (calls === 1 ? "Quiet on this screen" : `Quiet on this screen (${calls})`);

/** Silence is no answer. */
export const nobodyHasIt = "Nobody has answered yet; it rings everywhere.";

export const haveIt = "I have it";

export const pushOff = "This device is not called while the page is closed.";

export const pushOn = "This device is called while the page is closed.";

export const pushDenied = "This browser has been told to show no notifications from here. Allow them in its settings for this site.";

/** @param {string} why */
export const pushRefused = (why) => `The browser could not be set up for it: ${why}`;

export const testFailed = "The server could not be asked. Try again in a moment.";

export const measured = "This screen is measured. The wall view uses it from now on.";

/** Said beside the colour, so that nobody has to know it. */
export const priority = { high: "Urgent", medium: "Due", low: "Note" };
