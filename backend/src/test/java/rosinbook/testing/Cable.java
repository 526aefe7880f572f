package rosinbook.testing;

import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.net.Socket;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;

/** A TCP connection to somewhere that can be cut, or held so that nothing passes and nobody is told. */
public final class Cable implements AutoCloseable {
    private enum State {
        WHOLE,
        CUT,
        HELD
    }

    private final String host;
    private final int port;
    private final ServerSocket entry;
    private final Set<Socket> sockets = ConcurrentHashMap.newKeySet();
    private final Object change = new Object();
    private State state = State.WHOLE;

    private Cable(String host, int port) throws IOException {
        this.host = host;
        this.port = port;
        entry = new ServerSocket(0, 50, InetAddress.getLoopbackAddress());
        daemon(this::accept);
    }

    public static Cable to(String host, int port) throws IOException {
        return new Cable(host, port);
    }

    /** Where its near end is, on the loopback address. */
    public int port() {
        return entry.getLocalPort();
    }

    /** Everything under way breaks off, and whoever comes is turned away. */
    public void cut() {
        become(State.CUT);
        sockets.forEach(Cable::closeQuietly);
    }

    /** Nothing passes any more, and nobody is told. */
    public void hold() {
        become(State.HELD);
    }

    /** All is well again. */
    public void mend() {
        become(State.WHOLE);
    }

    private void become(State next) {
        synchronized (change) {
            state = next;
            change.notifyAll();
        }
    }

    private State stateWhenNotHeld() throws InterruptedException {
        synchronized (change) {
            while (state == State.HELD) {
                change.wait();
            }
            return state;
        }
    }

    private void accept() {
        while (!entry.isClosed()) {
            try {
                Socket near = entry.accept();
                sockets.add(near);
                daemon(() -> join(near));
            } catch (IOException closed) {
                return;
            }
        }
    }

    private void join(Socket near) {
        try {
            if (stateWhenNotHeld() == State.CUT) {
                closeQuietly(near);
                return;
            }
            Socket far = new Socket(host, port);
            sockets.add(far);
            daemon(() -> pass(near, far));
            pass(far, near);
        } catch (IOException problem) {
            closeQuietly(near);
        } catch (InterruptedException interrupted) {
            Thread.currentThread().interrupt();
        }
    }

    private void pass(Socket from, Socket to) {
        try (from;
                to) {
            InputStream in = from.getInputStream();
            OutputStream out = to.getOutputStream();
            byte[] buffer = new byte[1 << 14];
            for (int count = in.read(buffer); count >= 0; count = in.read(buffer)) {
                if (stateWhenNotHeld() == State.CUT) {
                    return;
                }
                out.write(buffer, 0, count);
            }
        } catch (IOException broken) {
            // both ends are closed on the way out
        } catch (InterruptedException interrupted) {
            Thread.currentThread().interrupt();
        }
    }

    private static void daemon(Runnable work) {
        Thread thread = new Thread(work, "cable");
        thread.setDaemon(true);
        thread.start();
    }

    private static void closeQuietly(Socket socket) {
        try {
            socket.close();
        } catch (IOException alreadyGone) {
            // that is what was wanted
        }
    }

    @Override
    public void close() throws IOException {
        entry.close();
        cut();
    }
}
