/** What is being done and for how long, with a way out. */
import { useEffect, useState } from "react";

type Props = {
  readonly what: string /** null where there is nothing to cancel */;
  readonly onCancel: (() => void) | null;
};

export function Progress({ what, onCancel }: Props) {
  const [seconds, setSeconds] = useState(0);
  useEffect(() => {
    const timer = setInterval(() => setSeconds((s) => s + 1), 1000);
    return () => clearInterval(timer);
  }, []);
  return (
    <div className="progress">
      <p role="status">{what}.</p>
      <p aria-hidden="true" className="progress-seconds">
        {seconds} s
      </p>
      {onCancel !== null && (
        <button type="button" onClick={onCancel}>
          Cancel
        </button>
      )}
    </div>
  );
}
