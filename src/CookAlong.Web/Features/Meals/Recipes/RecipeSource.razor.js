/** @param {HTMLTextAreaElement} area */
export const text = (area) => new TextEncoder().encode(area.value);
