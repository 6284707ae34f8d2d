package evenrise.model.event;

import java.util.PriorityQueue;

/** What is to happen by itself later on, earliest first; of things at one time, what was entered first. */
final class Agenda {
    /** What an entry asks for. */
    enum Kind {
        /** The supply was low for its hold time. */
        TRIP,
        /** The supply was steady for its wait. */
        RESUME,
        /** A point that was transferred is on its other source. */
        TRANSFERRED,
        OPEN,
        /** The nominal time of a switch-on: from now on the control believes that the breaker is closed. */
        NOMINAL,
        /** The breaker really closes. */
        CLOSE
    }

    /**
     * @param version of its subject; an entry of an earlier version is void
     * @param nominalSeconds of a switch-on
     */
    record Entry(double atSeconds, long serial, Kind kind, int load, int version, double nominalSeconds)
            implements Comparable<Entry> {
        @Override
        public int compareTo(Entry other) {
            int byTime = Double.compare(atSeconds, other.atSeconds);
            return byTime != 0 ? byTime : Long.compare(serial, other.serial);
        }
    }

    private final PriorityQueue<Entry> entries = new PriorityQueue<>();
    private long serial;

    void add(double atSeconds, Kind kind, int load, int version, double nominalSeconds) {
        entries.add(new Entry(atSeconds, serial++, kind, load, version, nominalSeconds));
    }

    boolean isEmpty() {
        return entries.isEmpty();
    }

    double nextSeconds() {
        return entries.isEmpty() ? Double.POSITIVE_INFINITY : entries.peek().atSeconds();
    }

    Entry take() {
        return entries.remove();
    }
}
