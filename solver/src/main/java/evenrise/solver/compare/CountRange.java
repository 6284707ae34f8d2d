package evenrise.solver.compare;

/** From so many to so many, both included. */
public record CountRange(int least, int most) {
    /** Whatever number. */
    static final CountRange ANY = new CountRange(0, Integer.MAX_VALUE);

    public CountRange {
        if (least < 0 || most < least) {
            throw new IllegalArgumentException("expected N or N..M with N at most M");
        }
    }

    static CountRange of(int number) {
        return new CountRange(number, number);
    }

    boolean has(int number) {
        return number >= least && number <= most;
    }

    /** Of what is left where so many are there already. */
    CountRange less(int there) {
        return new CountRange(Math.max(0, least - there), most == Integer.MAX_VALUE ? most : Math.max(0, most - there));
    }
}
