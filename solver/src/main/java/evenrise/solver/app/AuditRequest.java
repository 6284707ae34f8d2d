package evenrise.solver.app;

import java.nio.file.Path;
import java.util.Optional;

/**
 * A plan is to be judged, whoever made it.
 *
 * @param from earlier plan that moves are counted from
 * @param proof how long and with how many threads to prove how near the plan is to the best there could be, with a time;
 *     empty for what short arguments show
 * @param proofFile where what is proven is kept, and from where the proof goes on; with a proof alone
 * @since 0.1.0
 */
public record AuditRequest(
        Source project, Source plan, Optional<Source> from, Optional<Effort> proof, Optional<Path> proofFile) {
    public AuditRequest {
        if (proof.isPresent() && proof.get().moves().isPresent()) {
            throw new IllegalArgumentException("a proof has a time, no moves");
        }
        if (proofFile.isPresent() && proof.isEmpty()) {
            throw new IllegalArgumentException("a file of a proof needs a proof");
        }
    }

    public AuditRequest(Source project, Source plan) {
        this(project, plan, Optional.empty(), Optional.empty(), Optional.empty());
    }

    public static AuditRequest of(Path project, Path plan) {
        return new AuditRequest(Source.file(project), Source.file(plan));
    }

    /** The same against an earlier plan, which moves are counted from. */
    public AuditRequest withFrom(Path earlier) {
        return new AuditRequest(project, plan, Optional.of(Source.file(earlier)), proof, proofFile);
    }

    /** The same, and proven for a time. */
    public AuditRequest withProof(Effort effort) {
        return new AuditRequest(project, plan, from, Optional.of(effort), proofFile);
    }

    /** The same, and what is proven is kept in this file, from which the proof goes on where it is there. */
    public AuditRequest withProof(Effort effort, Path file) {
        return new AuditRequest(project, plan, from, Optional.of(effort), Optional.of(file));
    }
}
