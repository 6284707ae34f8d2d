package evenrise.solver.app;

import java.nio.file.Path;
import java.util.Optional;

/**
 * A plan is to be judged, whoever made it.
 *
 * @param from earlier plan that moves are counted from
 * @since 0.1.0
 */
public record AuditRequest(Source project, Source plan, Optional<Source> from) {
    public AuditRequest(Source project, Source plan) {
        this(project, plan, Optional.empty());
    }

    public static AuditRequest of(Path project, Path plan) {
        return new AuditRequest(Source.file(project), Source.file(plan));
    }

    /** The same against an earlier plan, which moves are counted from. */
    public AuditRequest withFrom(Path earlier) {
        return new AuditRequest(project, plan, Optional.of(Source.file(earlier)));
    }
}
