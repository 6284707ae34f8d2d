package evenrise.solver.bounds;

/** The first end of the sequence by which order, settling and boards leave every load a time to come on. */
final class ShortestDuration {
    private final BoundedProject subject;
    private final BoardRoom room;

    ShortestDuration(BoundedProject subject) {
        this.subject = subject;
        this.room = new BoardRoom(subject);
    }

    /** 0 where no end suffices. Time: (loads and relations) × instants². */
    double seconds() {
        int low = 0;
        int high = subject.grid.count();
        while (low < high) {
            int middle = (low + high) / 2;
            if (suffices(middle)) {
                high = middle;
            } else {
                low = middle + 1;
            }
        }
        return low < subject.grid.count() ? subject.grid.earliestSeconds(low) : 0;
    }

    private boolean suffices(int end) {
        for (int amplifier = 0; amplifier <= end; amplifier++) {
            Box box = new Box(amplifier, amplifier, 0, end);
            if (room.suffices(box) && Windows.in(box, subject).possible) {
                return true;
            }
        }
        return false;
    }
}
