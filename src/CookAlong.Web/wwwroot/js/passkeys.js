// Passkeys: adds one on the account's page, signs in with one at the door. Where this page cannot, it says why.
const offer = /** @type {HTMLElement | null} */ (document.querySelector("[data-passkey]"));
const words = /** @type {HTMLElement | null} */ (document.querySelector("[data-passkey-words]"));

const bytes = (/** @type {string} */ text) => Uint8Array.from(atob(text.replace(/-/g, "+").replace(/_/g, "/")), (one) => one.charCodeAt(0));
const text = (/** @type {ArrayBuffer} */ data) => btoa(String.fromCharCode(...new Uint8Array(data))).replace(/\+/g, "-").replace(/\//g, "_").replace(/=+$/, "");

function whyNot() {
  if (!isSecureContext) return "Passkeys work only where the address begins with https, or on the server's own machine. Until then, the password does.";
  if (/^[\d.]+$|^\[/.test(location.hostname)) return "Passkeys need a name in the address, not a number. Open the kitchen by its name, and they work.";
  if (!("PublicKeyCredential" in window)) return "This browser knows no passkeys.";
  return null;
}

async function ask(/** @type {string} */ path, /** @type {unknown} */ body) {
  const answer = await fetch(path, { method: "POST", headers: { "Content-Type": "application/json", Accept: "application/json" }, body: JSON.stringify(body ?? {}) });
  const isJson = answer.headers.get("Content-Type")?.startsWith("application/json");
  const said = isJson ? await answer.json() : {};
  if (!answer.ok) throw new Error(said.message ?? "The server did not take that. Load the page again.");
  return said;
}

async function add(/** @type {HTMLElement} */ at) {
  const name = /** @type {HTMLInputElement} */ (at.querySelector("input"));
  if (!name.reportValidity()) return;
  const question = await ask(`${at.dataset.passkey}/question`, null);
  question.challenge = bytes(question.challenge);
  question.user.id = bytes(question.user.id);
  for (const known of question.excludeCredentials ?? []) known.id = bytes(known.id);
  const made = /** @type {any} */ (await navigator.credentials.create({ publicKey: question }));
  await ask(at.dataset.passkey ?? "", {
    name: name.value,
    credential: {
      id: made.id,
      rawId: text(made.rawId),
      type: made.type,
      response: { clientDataJSON: text(made.response.clientDataJSON), attestationObject: text(made.response.attestationObject), transports: made.response.getTransports?.() ?? [] },
      clientExtensionResults: {},
    },
  });
  location.replace(location.pathname);
}

async function signIn(/** @type {HTMLElement} */ at) {
  const question = await ask(`${at.dataset.passkey}/question`, null);
  question.challenge = bytes(question.challenge);
  for (const known of question.allowCredentials ?? []) known.id = bytes(known.id);
  const found = /** @type {any} */ (await navigator.credentials.get({ publicKey: question }));
  const { goTo } = await ask(at.dataset.passkey ?? "", {
    returnUrl: document.querySelector("input[name=returnUrl]")?.getAttribute("value") ?? null,
    credential: {
      id: found.id,
      rawId: text(found.rawId),
      type: found.type,
      response: {
        clientDataJSON: text(found.response.clientDataJSON),
        authenticatorData: text(found.response.authenticatorData),
        signature: text(found.response.signature),
        userHandle: found.response.userHandle ? text(found.response.userHandle) : null,
      },
      clientExtensionResults: {},
    },
  });
  location.assign(goTo);
}

function say(/** @type {unknown} */ failure) {
  if (!words) return;
  const name = failure instanceof Error ? failure.name : "";
  words.textContent =
    name === "NotAllowedError" ? "Nothing came of that: it was called off, or took too long."
    : name === "InvalidStateError" ? "This device has a passkey for you already."
    : failure instanceof Error ? failure.message
    : String(failure);
}

if (offer && words) {
  const no = whyNot();
  offer.hidden = no !== null;
  words.textContent = no ?? "";
  const button = /** @type {HTMLButtonElement} */ (offer.querySelector("button"));
  button.addEventListener("click", async () => {
    button.disabled = true;
    words.textContent = "";
    try {
      await (offer.dataset.passkeyDoes === "add" ? add(offer) : signIn(offer));
    } catch (failure) {
      say(failure);
    } finally {
      button.disabled = false;
    }
  });
}
