package evenrise.solver.compare;

/** From so many to so many, both included. */
public record CountRange(int least, int most) {
    public CountRange {
        if (least < 1 || most < least) {
            throw new IllegalArgumentException("expected 1 or more, as N or N..M with N at most M");
        }
    }
}
