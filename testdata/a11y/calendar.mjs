// The calendar, read by somebody else's parser and held against the plan.
import ICAL from "ical.js";

// What the calendar should hold, in its order: each day of work, then the fires and cuts
// of that day; and the days on which the casks are sampled.
function expected(plan) {
  const out = [];
  const caught = (s) => ["strip", "spirit"].includes(s.stage) && ["heat", "heads", "hearts", "tails", "stop"].includes(s.id.split(".").pop());
  for (const d of plan.schedule.days) {
    const steps = plan.schedule.steps.filter((s) => s.start.startsWith(d.date));
    out.push({ what: d.date, from: d.from, to: d.to, alarms: 1, title: d.work.join(", "), read: steps.flatMap((s) => s.read ?? []) });
    for (const s of steps.filter(caught)) {
      out.push({ what: s.id, from: s.start, to: s.start, alarms: 1, title: s.title.text.split(" {}")[0], read: s.read ?? [] });
    }
  }
  for (const date of plan.schedule.samples ?? []) {
    out.push({ what: `sample of ${date}`, date, alarms: 0, title: "Sample the casks", read: [] });
  }
  return out;
}

export function calendarFaults(text, plan) {
  const faults = [];
  const root = new ICAL.Component(ICAL.parse(text));
  const zones = root.getAllSubcomponents("vtimezone").map((z) => new ICAL.Timezone(z));
  ICAL.TimezoneService.reset();
  zones.forEach((z) => ICAL.TimezoneService.register(z));
  const events = root.getAllSubcomponents("vevent").map((e) => new ICAL.Event(e));
  const wanted = expected(plan);
  if (events.length !== wanted.length) faults.push(`${events.length} events for ${wanted.length}`);
  const utc = (t) => t.convertToZone(ICAL.Timezone.utcTimezone).toJSDate().getTime();
  events.slice(0, wanted.length).forEach((e, i) => {
    const w = wanted[i];
    if (w.date) {
      if (!e.startDate.isDate || e.startDate.toString() !== w.date) faults.push(`${w.what} is on ${e.startDate}`);
    } else {
      if (e.startDate.zone.tzid !== plan.plant.zone) faults.push(`${w.what} is not in the plant's zone`);
      if (utc(e.startDate) !== Date.parse(w.from)) faults.push(`${w.what} starts at ${e.startDate}, not ${w.from}`);
      if (utc(e.endDate) !== Date.parse(w.to)) faults.push(`${w.what} ends at ${e.endDate}, not ${w.to}`);
    }
    if (!e.summary.endsWith(" · " + plan.batch.name)) faults.push(`${w.what} is called ${e.summary}`);
    if (!e.summary.toLowerCase().startsWith(w.title.toLowerCase())) faults.push(`${w.what} is called ${e.summary}, not ${w.title}`);
    const alarms = e.component.getAllSubcomponents("valarm");
    if (alarms.length !== w.alarms) faults.push(`${w.what} has ${alarms.length} alarms`);
    for (const a of alarms) {
      if (!(a.getFirstPropertyValue("trigger").toSeconds() < 0)) faults.push(`${w.what}: the alarm is not before it`);
    }
    if (e.component.getFirstPropertyValue("dtstamp").toJSDate().getTime() !== Date.parse(plan.batch.start)) faults.push(`${w.what}: the stamp is not the batch's start`);
    for (const r of w.read) {
      if (!e.description.includes(r.what)) faults.push(`${w.what} does not say to read the ${r.what}`);
    }
  });
  if (new Set(events.map((e) => e.uid)).size !== events.length) faults.push("a UID comes twice");
  return faults;
}
