// Blazor's defaults hide a lost connection for half a minute; here the cook sees it after six seconds.
// How long the server bears a silent browser stands in Pages.cs.
Blazor.start({
  circuit: {
    configureSignalR: (connection) => connection.withServerTimeout(6000).withKeepAliveInterval(2000),
    reconnectionOptions: { maxRetries: 900, retryIntervalMilliseconds: 2000 },
  },
});

// "Rejected" means that the server is back but no longer knows this page: a fresh one does.
document.getElementById("components-reconnect-modal").addEventListener("components-reconnect-state-changed", (event) => {
  if (event.detail.state === "rejected") {
    location.reload();
  }
});
