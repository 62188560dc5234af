
// In the served copy only: loads the sheet anew when the server has another.
new EventSource("events").onmessage = function (message) {
  if (message.data !== document.documentElement.dataset.version) location.reload();
};
