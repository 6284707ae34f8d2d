package evenrise.solver.app;

import evenrise.model.contract.Decimals;
import evenrise.model.contract.Harmless;
import evenrise.model.contract.Phrase;
import evenrise.model.file.KeptFile;
import evenrise.model.file.Reading;
import evenrise.model.file.WriteFailed;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import java.util.function.Consumer;

/**
 * Where a proof keeps what it has proven of a project, and where the next one goes on. What the file says is taken as this
 * program's own word: it is not proven anew.
 */
final class KeptProof {
    private final Optional<Path> file;
    private final String projectSha256;
    private final Consumer<String> note;
    private final double earlierAmps;
    private final int proofs;
    private boolean isLost;

    /**
     * @param file empty where nothing is kept
     * @throws JobFailed where the file cannot be read, or is of another project or another version
     */
    KeptProof(Optional<Path> file, String projectSha256, Consumer<String> note) {
        this.file = file;
        this.projectSha256 = projectSha256;
        this.note = note;
        Optional<ProofRecord> earlier = file.filter(Files::exists).map(this::read);
        this.earlierAmps = earlier.map(ProofRecord::provenObjective).orElse(0.0);
        this.proofs = 1 + earlier.map(ProofRecord::proofs).orElse(0);
        earlier.ifPresent(each -> note.accept("goes on from " + shown(file.get()) + ", which says that "
                + Phrase.counted(each.proofs(), "proof") + " before this one came to "
                + Decimals.fixed(each.provenObjective(), 2)
                + " A equiv.; that is taken as said, not proven anew."));
    }

    private ProofRecord read(Path from) {
        Reading<ProofRecord> read =
                KeptFile.read(from, ProofRecord.class, "what was kept of a proof", ProofRecord.FORMAT);
        ProofRecord kept = read.value()
                .orElseThrow(() -> refused(
                        from,
                        "cannot be gone on from: " + read.problems().get(0).message()));
        if (!kept.projectSha256().equals(projectSha256)) {
            throw refused(from, "is of another project, or of an earlier state of this one.");
        }
        if (!kept.softwareVersion().equals(Jobs.version())) {
            throw refused(from, "was written by version " + Harmless.shown(kept.softwareVersion()) + ".");
        }
        return kept;
    }

    private static JobFailed refused(Path from, String why) {
        return new JobFailed(
                JobFailed.Reason.INPUT, shown(from) + " " + why + " Name another file, and the proof begins anew.");
    }

    private static String shown(Path path) {
        return Phrase.quoted(Harmless.shown(path.toString()));
    }

    /** What was proven before, in ampere-equivalents; 0 where nothing was. */
    double earlierAmps() {
        return earlierAmps;
    }

    /** Another seed for each proof that goes on, so that it does not go the same way again. */
    long seed(long first) {
        return first + proofs - 1;
    }

    /** Writes it as a whole or not at all; tells once where it cannot. */
    void keep(double provenAmps) {
        if (file.isEmpty() || isLost) {
            return;
        }
        try {
            KeptFile.write(ProofRecord.of(projectSha256, provenAmps, proofs), file.get());
        } catch (WriteFailed e) {
            isLost = true;
            note.accept("what is proven cannot be kept: " + e.getMessage());
        }
    }
}
