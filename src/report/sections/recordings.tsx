/** Section "Recordings": the timeline of each with its states and steady stretches, and how its channels were read. */
import type { Outcome } from "../../job/result.ts";
import { formatDuration } from "../words/number-words.ts";
import { type ChannelAction, ChannelTable } from "./channel-table.tsx";
import { Timeline } from "./timeline.tsx";

type Props = { readonly outcome: Outcome; readonly channelAction?: ChannelAction | undefined };

export function Recordings({ outcome, channelAction }: Props) {
  const { view, result } = outcome;
  return (
    <>
      {result.recordings.map((recording, k) => {
        const timeline = view.timelines.find((t) => t.recording === k);
        const channels = view.channels[k] ?? [];
        const warnings = view.recognitionWarnings[k] ?? [];
        return (
          <article key={`${recording.name} ${recording.sha256}`} className="recording">
            <h3 className="file-name">
              {recording.name}
              {timeline !== undefined && <span className="duration"> {formatDuration(timeline.duration_s)}</span>}
            </h3>
            {warnings.length > 0 && (
              <ul className="plain">
                {warnings.map((w) => (
                  <li key={`${w.code} ${w.text}`}>{w.text}</li>
                ))}
              </ul>
            )}
            {timeline !== undefined && <Timeline timeline={timeline} />}
            {channels.length > 0 && <ChannelTable recording={k} channels={channels} action={channelAction} />}
          </article>
        );
      })}
    </>
  );
}
