/** Where this server's addresses begin: "/", or "/kitchen/" behind a proxy that keeps other things at the root. Told by where this script lies. */
export const root = new URL("../", import.meta.url).pathname;
