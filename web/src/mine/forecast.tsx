import type { RegionForecast } from "../wire";
import { dayText } from "../words/dates";
import { percent } from "../words/numbers";

/** What is likely to be recalled, per region: today, and on the day of the practical if the plan is kept. */
export function Forecast({ rows, day }: { rows: readonly RegionForecast[]; day: string }) {
  if (rows.length === 0) return null;
  return (
    <section>
      <h2 class="today_heading">Expected on {dayText(day)}</h2>
      <ul class="forecast">
        {rows.map((row) => (
          <li key={row.region} class="forecast_row">
            <span class="forecast_region">{regionText(row.region)}</span>
            <span class="forecast_words">
              <b>{percent(row.exam)}</b> recalled then, {percent(row.now)} today
            </span>
            <span class="forecast_bar" aria-hidden="true">
              <span class="forecast_exam" style={{ transform: `scaleX(${row.exam})` }} />
              <span class="forecast_now" style={{ left: `${Math.round(row.now * 1000) / 10}%` }} />
            </span>
          </li>
        ))}
      </ul>
      <p class="forecast_note">
        A forecast of the memory model for what you were asked; the line in each bar is today.
      </p>
    </section>
  );
}

/** Ids of regions are words joined by underscores. */
function regionText(region: string): string {
  return region.replace(/_/g, " ");
}
