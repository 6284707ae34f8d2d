package evenrise.solver.bench;

import com.sun.management.OperatingSystemMXBean;
import java.lang.management.ManagementFactory;

/**
 * Processor time of this process, all threads together, against what it may use: what else runs on the machine takes nothing
 * from it. Compiling and collecting are in it.
 */
final class Spending {
    private static final OperatingSystemMXBean SYSTEM =
            ManagementFactory.getPlatformMXBean(OperatingSystemMXBean.class);

    /** Between two looks. */
    private static final long LOOK_MILLIS = 20;

    private final double begin = seconds();
    private final double allowed;

    /** @param allowed seconds of the processor from now on */
    Spending(double allowed) {
        this.allowed = allowed;
    }

    /** What the process has used since it began. */
    static double seconds() {
        return SYSTEM.getProcessCpuTime() / 1e9;
    }

    /** Which part is used by now; above 1 where more is. */
    double part() {
        return (seconds() - begin) / allowed;
    }

    double left() {
        return Math.max(0, (1 - part()) * allowed);
    }

    /** Calls {@code stop} once all is used. */
    void whenUsed(Runnable stop) {
        Thread watch = new Thread(
                () -> {
                    while (part() < 1) {
                        try {
                            Thread.sleep(LOOK_MILLIS);
                        } catch (InterruptedException e) {
                            return;
                        }
                    }
                    stop.run();
                },
                "spending");
        watch.setDaemon(true);
        watch.start();
    }
}
