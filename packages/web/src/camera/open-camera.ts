/** Why there is no camera to look through. */
export type CameraLack = 'not secure' | 'none' | 'refused' | 'busy' | 'lost';

export type OpenedCamera =
  | { readonly kind: 'open'; readonly stream: MediaStream; readonly track: MediaStreamTrack }
  | { readonly kind: 'lack'; readonly lack: CameraLack };

/** A camera that may be chosen. */
export interface CameraChoice {
  readonly id: string;
  /** Empty until a camera was allowed. */
  readonly label: string;
}

/** For live readings, few pixels and many pictures a second; for one picture, as many pixels as there are. */
export type CameraUse = 'live' | 'picture';

/** In a live picture a spot is some dozen pixels wide, and a page's worker keeps up with every one. */
const wanted = {
  live: { width: { ideal: 640 }, height: { ideal: 480 }, frameRate: { ideal: 30 } },
  picture: { width: { ideal: 4096 }, height: { ideal: 3072 } },
} satisfies Record<CameraUse, MediaTrackConstraints>;

/**
 * Opens a camera, the one that looks away from its user where nobody chose.
 *
 * @param devices `navigator.mediaDevices`: browsers leave it out where the page came over plain HTTP from elsewhere
 * @source Media Capture and Streams (W3C): names of failures (from memory)
 */
export async function openCamera(
  devices: MediaDevices | undefined,
  chosen: string | null,
  use: CameraUse,
): Promise<OpenedCamera> {
  if (devices?.getUserMedia === undefined) return { kind: 'lack', lack: 'not secure' };
  const which: MediaTrackConstraints =
    chosen === null ? { facingMode: { ideal: 'environment' } } : { deviceId: { exact: chosen } };
  try {
    const stream = await devices.getUserMedia({ audio: false, video: { ...wanted[use], ...which } });
    const [track] = stream.getVideoTracks();
    return track === undefined ? { kind: 'lack', lack: 'none' } : { kind: 'open', stream, track };
  } catch (error) {
    return { kind: 'lack', lack: lackOf(error) };
  }
}

function lackOf(error: unknown): CameraLack {
  switch (error instanceof DOMException ? error.name : '') {
    case 'NotAllowedError':
    case 'SecurityError':
      return 'refused';
    case 'NotFoundError':
    case 'OverconstrainedError':
      return 'none';
    default:
      return 'busy';
  }
}

/** The cameras there are. */
export async function camerasThere(devices: MediaDevices | undefined): Promise<readonly CameraChoice[]> {
  const all = (await devices?.enumerateDevices?.()) ?? [];
  return all
    .filter(({ kind, deviceId }) => kind === 'videoinput' && deviceId !== '')
    .map(({ deviceId, label }) => ({ id: deviceId, label }));
}
