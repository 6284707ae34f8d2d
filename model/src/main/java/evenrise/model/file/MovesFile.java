package evenrise.model.file;

import evenrise.model.plan.PlanMoves;
import java.io.InputStream;
import java.nio.file.Path;

/** Reads change files that come back from a page. */
public final class MovesFile {
    private static final class Kind extends FileKind<PlanMoves> {
        Kind() {
            super(PlanMoves.class, "the change file", PlanMoves.FORMAT);
        }

        @Override
        void check(PlanMoves moves, Problems problems) {
            // Whether its loads and places are there, whoever puts them down says.
        }
    }

    private MovesFile() {}

    /** Reports every problem in one pass, also those of the file itself; throws nothing. */
    public static Reading<PlanMoves> read(Path file) {
        return new Kind().read(file);
    }

    /** @param name what messages call the stream */
    public static Reading<PlanMoves> read(InputStream in, String name) {
        return new Kind().read(in, name);
    }
}
