import { expect, test } from 'vitest';
import { camerasThere, openCamera } from './open-camera.ts';

/** A browser's way to its cameras, played; what it was asked for is remembered. */
function played(answer: () => Promise<MediaStream>) {
  const asked: MediaStreamConstraints[] = [];
  const devices = {
    getUserMedia: (constraints: MediaStreamConstraints) => {
      asked.push(constraints);
      return answer();
    },
    enumerateDevices: async () => [
      { kind: 'audioinput', deviceId: 'm', label: 'a microphone' },
      { kind: 'videoinput', deviceId: 'c1', label: 'front' },
      { kind: 'videoinput', deviceId: '', label: '' },
    ],
  } as unknown as MediaDevices;
  return { devices, asked };
}
const failing = (name: string) => played(() => Promise.reject(new DOMException('no', name)));

/** Names of failures: Media Capture and Streams (W3C), getUserMedia, from memory. */
test.each([
  ['NotAllowedError', 'refused'],
  ['SecurityError', 'refused'],
  ['NotFoundError', 'none'],
  ['OverconstrainedError', 'none'],
  ['NotReadableError', 'busy'],
  ['AbortError', 'busy'],
] as const)('%s is told as %s', async (name, lack) => {
  expect(await openCamera(failing(name).devices, null, 'live')).toEqual({ kind: 'lack', lack });
});

test('a browser that has no cameras to give says the page is not secure', async () => {
  expect(await openCamera(undefined, null, 'live')).toEqual({ kind: 'lack', lack: 'not secure' });
  expect(await openCamera({} as MediaDevices, null, 'live')).toEqual({ kind: 'lack', lack: 'not secure' });
  expect(await camerasThere(undefined)).toEqual([]);
});

test('the camera that looks away is asked for, or the one that was chosen; never a microphone', async () => {
  const track = {} as MediaStreamTrack;
  const stream = { getVideoTracks: () => [track] } as unknown as MediaStream;
  const { devices, asked } = played(() => Promise.resolve(stream));
  expect(await openCamera(devices, null, 'live')).toEqual({ kind: 'open', stream, track });
  await openCamera(devices, 'c1', 'picture');
  expect(asked.map(({ audio }) => audio)).toEqual([false, false]);
  expect(asked[0]?.video).toMatchObject({ facingMode: { ideal: 'environment' } });
  expect(asked[1]?.video).toMatchObject({ deviceId: { exact: 'c1' } });
  expect(await camerasThere(devices)).toEqual([{ id: 'c1', label: 'front' }]);
});
