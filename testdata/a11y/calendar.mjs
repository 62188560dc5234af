// The calendar, read by somebody else's parser and held against the plan.
import ICAL from "ical.js";

export function calendarFaults(text, plan) {
  const faults = [];
  const root = new ICAL.Component(ICAL.parse(text));
  const zones = root.getAllSubcomponents("vtimezone").map((z) => new ICAL.Timezone(z));
  ICAL.TimezoneService.reset();
  zones.forEach((z) => ICAL.TimezoneService.register(z));
  const events = root.getAllSubcomponents("vevent").map((e) => new ICAL.Event(e));
  const steps = plan.schedule.steps;
  if (events.length !== steps.length) faults.push(`${events.length} events for ${steps.length} steps`);
  const utc = (t) => t.convertToZone(ICAL.Timezone.utcTimezone).toJSDate().getTime();
  events.forEach((e, i) => {
    const s = steps[i];
    const from = Date.parse(s.start), to = Date.parse(s.end), long = to - from > 14 * 24 * 3600e3;
    if (e.startDate.zone.tzid !== plan.plant.zone) faults.push(`${s.id} is not in the plant's zone`);
    if (utc(e.startDate) !== (long ? to : from)) faults.push(`${s.id} starts at ${e.startDate}, not ${s.start}`);
    if (!long && utc(e.endDate) !== to) faults.push(`${s.id} ends at ${e.endDate}, not ${s.end}`);
    if (!e.summary.startsWith(plan.batch.name + ": ")) faults.push(`${s.id} is called ${e.summary}`);
    const alarms = e.component.getAllSubcomponents("valarm");
    if (alarms.length !== (s.attend === "alone" ? 0 : 1)) faults.push(`${s.id} has ${alarms.length} alarms`);
    for (const a of alarms) {
      if (!(a.getFirstPropertyValue("trigger").toSeconds() < 0)) faults.push(`${s.id}: the alarm is not before it`);
    }
    if (e.component.getFirstPropertyValue("dtstamp").toJSDate().getTime() !== Date.parse(plan.batch.start)) faults.push(`${s.id}: the stamp is not the batch's start`);
    for (const r of s.read ?? []) {
      if (!e.description.includes(r.what)) faults.push(`${s.id} does not say to read the ${r.what}`);
    }
  });
  if (new Set(events.map((e) => e.uid)).size !== events.length) faults.push("a UID comes twice");
  return faults;
}
