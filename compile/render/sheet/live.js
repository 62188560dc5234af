
// In the served copy only: loads the sheet anew when the recipe is saved.
new EventSource("events").addEventListener("change", function () { location.reload(); });
