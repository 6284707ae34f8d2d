package evenrise.solver.app;

import java.nio.file.Path;

/**
 * What is another in one plan than in an earlier one.
 *
 * @since 0.1.0
 */
public record DiffRequest(Source earlier, Source later) {
    public static DiffRequest of(Path earlier, Path later) {
        return new DiffRequest(Source.file(earlier), Source.file(later));
    }
}
