package evenrise.solver.grid.ignite;

import evenrise.solver.grid.GridSite;
import evenrise.solver.grid.GridUnavailable;
import java.io.IOException;
import java.net.InetSocketAddress;
import java.net.Socket;
import java.util.List;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.TimeUnit;

/** Which of the places where workers may listen somebody listens at: the engine alone takes long to find that nobody does. */
final class OpenDoors {
    private static final int CONNECT_MILLIS = 2_000;
    private static final int BETWEEN_MILLIS = 500;
    private static final int SIDE_BY_SIDE = 32;

    private OpenDoors() {}

    /**
     * Asks again and again until somebody is there.
     *
     * @throws GridUnavailable where nobody is in time
     */
    static List<String> of(GridSite site, long patienceMillis) {
        long end = System.nanoTime() + TimeUnit.MILLISECONDS.toNanos(patienceMillis);
        ExecutorService threads = Executors.newFixedThreadPool(SIDE_BY_SIDE, task -> {
            Thread thread = new Thread(task, "knocks");
            thread.setDaemon(true);
            return thread;
        });
        try {
            while (true) {
                List<CompletableFuture<String>> asked = site.hosts().addresses().stream()
                        .map(each -> CompletableFuture.supplyAsync(() -> isOpen(each) ? each : "", threads))
                        .toList();
                List<String> open = asked.stream()
                        .map(CompletableFuture::join)
                        .filter(each -> !each.isEmpty())
                        .toList();
                if (!open.isEmpty()) {
                    return open;
                }
                if (System.nanoTime() > end) {
                    throw JoinFailure.nobody(site);
                }
                TimeUnit.MILLISECONDS.sleep(BETWEEN_MILLIS);
            }
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw JoinFailure.nobody(site);
        } finally {
            threads.shutdownNow();
        }
    }

    private static boolean isOpen(String address) {
        int colon = address.lastIndexOf(':');
        String host = address.substring(0, colon).replaceAll("[\\[\\]]", "");
        try (Socket socket = new Socket()) {
            socket.connect(new InetSocketAddress(host, Integer.parseInt(address.substring(colon + 1))), CONNECT_MILLIS);
            return true;
        } catch (IOException e) {
            return false;
        }
    }
}
