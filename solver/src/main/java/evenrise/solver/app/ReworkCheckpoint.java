package evenrise.solver.app;

import evenrise.model.contract.Harmless;
import evenrise.model.contract.Phrase;
import evenrise.model.file.KeptFile;
import evenrise.model.file.Reading;
import evenrise.model.plan.Plan;
import evenrise.solver.rework.KeptRework;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.function.Supplier;

/** What an earlier rework into a folder has left, and what this one keeps there until it is written. */
final class ReworkCheckpoint {
    private final Checkpoint checkpoint;
    private final ReworkStart start;
    private final Consumer<String> say;
    private final List<Plan> earlier;

    /** @param say takes what was found there */
    ReworkCheckpoint(ReworkRequest asked, ReworkStart start, Consumer<String> say) {
        this.checkpoint = Checkpoint.within(asked.folder());
        this.start = start;
        this.say = say;
        this.earlier = asked.resumes() ? resumed() : anew();
    }

    private List<Plan> resumed() {
        Optional<Path> left = checkpoint.left();
        if (left.isEmpty()) {
            say.accept("no rework into this folder was cut off; this one starts anew.");
            return List.of();
        }
        String shown = Phrase.quoted(Harmless.shown(left.get().toString()));
        Reading<KeptRework> read =
                KeptFile.read(left.get(), KeptRework.class, "what was kept of a rework", KeptRework.FORMAT);
        if (read.value().isEmpty()) {
            throw new JobFailed(
                    JobFailed.Reason.INPUT,
                    shown + " cannot be gone on from: " + read.problems().get(0)
                            + " Remove it, or leave --resume away.");
        }
        KeptRework kept = read.value().get();
        if (!kept.isOf(start.sha256(), start.builtSha256())) {
            throw new JobFailed(
                    JobFailed.Reason.INPUT,
                    shown + " is of another project or another plan as built. Leave --resume away to start anew.");
        }
        say.accept("goes on from " + Phrase.counted(kept.plans().size(), "plan") + " in " + shown
                + ", left by a rework that was cut off.");
        return kept.plans();
    }

    private List<Plan> anew() {
        if (checkpoint.left().isPresent()) {
            Path aside = checkpoint.putAside();
            say.accept("an earlier rework into this folder was cut off; what it found is now '"
                    + Harmless.shown(aside.toString()) + "'. To go on from it, rename it to '"
                    + Harmless.shown(checkpoint.file().getFileName().toString()) + "' and say --resume.");
        }
        return List.of();
    }

    /** Plans that an earlier rework has found; none where this one starts anew. */
    List<Plan> earlier() {
        return earlier;
    }

    /** Keeps plans, by rising moves, until the answer is closed. */
    CheckpointWriter<KeptRework> keeping(Supplier<List<Plan>> plans) {
        return checkpoint.keeping(() -> KeptRework.of(start.sha256(), start.builtSha256(), plans.get()), say);
    }

    /** What was found is written: this is needed no more, unless it is to be gone on with. */
    void ends(boolean wasCancelled) {
        if (wasCancelled) {
            say.accept("interrupted: --resume goes on from what was found so far.");
        } else {
            checkpoint.remove();
        }
    }
}
