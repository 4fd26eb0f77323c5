"""As much of a WebSocket (RFC 6455) as a test needs: text out, text in."""

from __future__ import annotations

import base64
import os
import socket
import struct

CONTINUED, TEXT, CLOSE, PING, PONG = 0, 1, 8, 9, 10


class WebSocket:
    def __init__(self, host: str, port: int, path: str) -> None:
        self._socket = socket.create_connection((host, port), timeout=120)
        key = base64.b64encode(os.urandom(16)).decode()
        self._socket.sendall(
            f"GET {path} HTTP/1.1\r\nHost: {host}:{port}\r\nUpgrade: websocket\r\nConnection: Upgrade\r\n"
            f"Sec-WebSocket-Key: {key}\r\nSec-WebSocket-Version: 13\r\n\r\n".encode()
        )
        self._file = self._socket.makefile("rb")
        status = self._file.readline()
        if b" 101 " not in status:
            raise ConnectionError(status.decode(errors="replace"))
        while self._file.readline().strip():
            pass

    def send(self, text: str) -> None:
        self._send(TEXT, text.encode())

    def _send(self, kind: int, data: bytes) -> None:
        length = len(data)
        size = (
            bytes([0x80 | length])
            if length < 126
            else b"\xfe" + struct.pack("!H", length)
            if length < 65_536
            else b"\xff" + struct.pack("!Q", length)
        )
        # a client has to mask what it sends
        mask = os.urandom(4)
        masked = bytes(byte ^ mask[place % 4] for place, byte in enumerate(data))
        self._socket.sendall(bytes([0x80 | kind]) + size + mask + masked)

    def receive(self) -> str:
        text = b""
        while True:
            first, second = self._read(2)
            length = second & 0x7F
            if length == 126:
                (length,) = struct.unpack("!H", self._read(2))
            elif length == 127:
                (length,) = struct.unpack("!Q", self._read(8))
            data = self._read(length)
            kind = first & 0x0F
            if kind == CLOSE:
                raise ConnectionError("The other side has closed the connection.")
            if kind == PING:
                self._send(PONG, data)
            elif kind in (TEXT, CONTINUED):
                text += data
                if first & 0x80:
                    return text.decode()

    def _read(self, length: int) -> bytes:
        data = self._file.read(length)
        if len(data) < length:
            raise ConnectionError("The connection broke off.")
        return data

    def close(self) -> None:
        self._socket.close()
