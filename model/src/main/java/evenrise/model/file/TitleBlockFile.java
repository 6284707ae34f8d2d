package evenrise.model.file;

import evenrise.model.check.TitleBlockChecks;
import evenrise.model.project.TitleBlock;
import java.io.InputStream;
import java.nio.file.Path;

/** Reads what stands in the title block of a set of sheets. */
public final class TitleBlockFile {
    private static final class Kind extends FileKind<TitleBlock> {
        Kind() {
            super(TitleBlock.class, "the title block", TitleBlock.FORMAT);
        }

        @Override
        void check(TitleBlock block, Problems problems) {
            TitleBlockChecks.errors(block).forEach(problems::add);
        }
    }

    private TitleBlockFile() {}

    /** Reports every problem in one pass, also those of the file itself; throws nothing. */
    public static Reading<TitleBlock> read(Path file) {
        return new Kind().read(file);
    }

    /** @param name what messages call the stream */
    public static Reading<TitleBlock> read(InputStream in, String name) {
        return new Kind().read(in, name);
    }
}
