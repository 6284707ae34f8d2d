package evenrise.solver.report;

/** Gives text the look of its tone. It must not change the text's width. */
@FunctionalInterface
public interface Paint {
    /** No colour at all. */
    Paint NONE = (tone, text) -> text;

    String on(Tone tone, String text);

    /** How wide a table may be. */
    default int columns() {
        return Table.WIDEST;
    }

    /** The same look where tables may be so wide. */
    default Paint within(int columns) {
        Paint look = this;
        return new Paint() {
            @Override
            public String on(Tone tone, String text) {
                return look.on(tone, text);
            }

            @Override
            public int columns() {
                return columns;
            }
        };
    }
}
