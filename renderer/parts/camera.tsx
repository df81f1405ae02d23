// One photograph by the camera: the keeper is asked each time, sees what it sees, takes it or leaves it; then it is off again.
import { useEffect, useRef, useState } from 'react';
import { startJob } from '../state/ledger-calls';
import { say } from '../state/store';
import { useModal } from './use-modal';

/** Longest side asked of the camera (px). */
const WANTED = 1920;

interface ViewProps {
  readonly stream: MediaStream;
  readonly label: string;
  readonly onTaken: (picture: File) => void;
  readonly onClose: () => void;
}

/** What the camera sees, and the press that takes it. */
function View({ stream, label, onTaken, onClose }: ViewProps) {
  const dialog = useModal();
  const video = useRef<HTMLVideoElement>(null);
  const [ready, setReady] = useState(false);
  useEffect(() => {
    if (video.current) video.current.srcObject = stream;
    // However it is left, the camera goes off.
    return () => stream.getTracks().forEach((track) => track.stop());
  }, [stream]);
  const take = async (): Promise<void> => {
    const seen = video.current;
    if (!seen) return;
    const canvas = new OffscreenCanvas(seen.videoWidth, seen.videoHeight);
    canvas.getContext('2d')?.drawImage(seen, 0, 0);
    const blob = await canvas.convertToBlob({ type: 'image/png' });
    onTaken(new File([blob], 'camera.png', { type: blob.type }));
  };
  return (
    <dialog
      ref={dialog}
      className="photograph-large camera"
      aria-label={`Camera: ${label}`}
      onClose={onClose}
    >
      <video ref={video} autoPlay muted playsInline onLoadedData={() => setReady(true)} />
      <div className="row">
        <button type="button" className="button primary" disabled={!ready} onClick={() => void take()}>
          Take the photograph
        </button>
        <button type="button" className="button quiet" onClick={onClose}>
          Cancel
        </button>
      </div>
    </dialog>
  );
}

interface Props {
  readonly label: string;
  readonly onTaken: (picture: File) => void;
}

/** The button, and while it is used the view. */
export function Camera({ label, onTaken }: Props) {
  const [stream, setStream] = useState<MediaStream | null>(null);
  const open = async (): Promise<void> => {
    const asked = await startJob('camera.ask', {}).done;
    if (!asked.ok) return say(asked.sentence, 'caution');
    if (!asked.value.allowed) return;
    try {
      setStream(await navigator.mediaDevices.getUserMedia({ video: { width: { ideal: WANTED } }, audio: false }));
    } catch (error) {
      // There is none, another program has it, or the system refuses it.
      const none = error instanceof DOMException && error.name === 'NotFoundError';
      say(none ? 'No camera was found.' : 'The camera can’t be used now. Another program may have it.');
    }
  };
  return (
    <>
      <button type="button" className="button quiet photograph-add" onClick={() => void open()}>
        Take one<span className="visually-hidden"> of {label} with the camera</span>
      </button>
      {stream && (
        <View
          stream={stream}
          label={label}
          onTaken={(picture) => {
            setStream(null);
            onTaken(picture);
          }}
          onClose={() => setStream(null)}
        />
      )}
    </>
  );
} // prettier-ignore
