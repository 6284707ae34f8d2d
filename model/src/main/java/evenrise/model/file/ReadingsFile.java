package evenrise.model.file;

import evenrise.model.readings.SavedReadings;
import java.io.InputStream;
import java.nio.file.Path;

/** Reads what was read on site, as the commissioning page saves it. */
public final class ReadingsFile {
    private static final class Kind extends FileKind<SavedReadings> {
        Kind() {
            super(SavedReadings.class, "the readings file", SavedReadings.FORMAT);
        }

        @Override
        void check(SavedReadings readings, Problems problems) {
            // Whether its loads and places are there, whoever reads the sheets says.
        }
    }

    private ReadingsFile() {}

    /** Reports every problem in one pass, also those of the file itself; throws nothing. */
    public static Reading<SavedReadings> read(Path file) {
        return new Kind().read(file);
    }

    /** @param name what messages call the stream */
    public static Reading<SavedReadings> read(InputStream in, String name) {
        return new Kind().read(in, name);
    }
}
