package evenrise.solver.app;

import java.nio.file.Path;

/**
 * A plan is to be judged, whoever made it.
 *
 * @since 0.1.0
 */
public record AuditRequest(Source project, Source plan) {
    public static AuditRequest of(Path project, Path plan) {
        return new AuditRequest(Source.file(project), Source.file(plan));
    }
}
