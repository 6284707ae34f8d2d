package evenrise.model.file;

import java.io.IOException;

/** An output could not be written; an earlier file of that name is as it was. */
public final class WriteFailed extends IOException {
    private static final long serialVersionUID = 1;

    WriteFailed(String message, IOException cause) {
        super(message, cause);
    }
}
