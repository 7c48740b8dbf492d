/** How each column was read: as what, in which unit, how sure, why, and whether it may bear witness. */
import type { ReactNode } from "react";
import type { ChannelView } from "../../job/result.ts";
import { formatNumber, formatPercent, formatUnit, NARROW_SPACE } from "../words/number-words.ts";

/** What the app puts beside a column, to correct how it was read. The report on paper has none. */
export type ChannelAction = (at: { readonly recording: number; readonly channel: ChannelView }) => ReactNode;

type Props = {
  readonly recording: number;
  readonly channels: readonly ChannelView[];
  readonly action: ChannelAction | undefined;
};

export function ChannelTable({ recording, channels, action }: Props) {
  return (
    <table className="stacking channels">
      <thead>
        <tr>
          <th scope="col">column in the file</th>
          <th scope="col">read as</th>
          <th scope="col">sure</th>
          <th scope="col">range</th>
          <th scope="col">standing, and why</th>
          {action !== undefined && <th scope="col">correct</th>}
        </tr>
      </thead>
      <tbody>
        {channels.map((channel) => (
          <tr key={channel.column} className={channel.quantity === null ? "unread" : undefined}>
            <th scope="row" className="header-text">
              {channel.header === "" ? `column ${channel.column}` : channel.header}
            </th>
            <td>
              {channel.quantityName ?? "not recognised"}
              {channel.unit !== null && channel.unit !== "1" && <>, {formatUnit(channel.unit)}</>}
            </td>
            <td className="number">{channel.quantity === null ? "" : formatPercent(channel.confidence, false)}</td>
            <td className="number">
              {range(channel)}
              {channel.interval_s !== null && (
                <span className="interval">
                  every {formatNumber(channel.interval_s, 2)}
                  {NARROW_SPACE}s
                </span>
              )}
            </td>
            <td>
              <span className={channel.standing === "measured" ? undefined : "standing"}>{channel.standing}</span>
              {why(channel)}
            </td>
            {action !== undefined && <td>{action({ recording, channel })}</td>}
          </tr>
        ))}
      </tbody>
    </table>
  );
}

/** How often it was read stands beside the range already. */
function why({ reasons, interval_s }: ChannelView): string {
  const told = reasons.filter((reason) => interval_s === null || !reason.startsWith("read every"));
  return told.length === 0 ? "" : `: ${told.join("; ")}`;
}

function range({ low, high }: ChannelView): string {
  return low === null || high === null ? "" : `${formatNumber(low)} to ${formatNumber(high)}`;
}
