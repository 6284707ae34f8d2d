package evenrise.solver.desk;

import evenrise.model.contract.Harmless;
import evenrise.model.contract.Phrase;
import evenrise.model.file.Reading;
import evenrise.model.file.WriteFailed;
import evenrise.model.plan.Cautions;
import evenrise.model.plan.MadeBy;
import evenrise.model.plan.Plan;
import evenrise.model.project.Project;
import evenrise.model.rules.PlanFinisher;
import evenrise.solver.app.Jobs;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;

/**
 * Keeps the files as the desk is: every change is written at once, as a whole, by a thread of its own, and again with all
 * figures when they are computed. Looks every second at what other programs do to the files, and takes that in.
 */
final class Keeper implements AutoCloseable {
    private static final long LOOK_MILLIS = 1000;
    private static final String OTHERS = "what another program changed";
    private static final int MOST_NAMED = 8;

    private final DeskFiles files;
    private final Desk desk;
    private final Thread thread = new Thread(this::keep, "keeper");
    private final Assessor assessor;
    private boolean isClosing;
    private boolean isWaiting;
    /** What the files hold; what was read from them is not written again by that alone. */
    private volatile DeskState written;

    private volatile DeskState taken;

    Keeper(DeskFiles files, Desk desk, Jobs jobs) {
        this.files = files;
        this.desk = desk;
        this.assessor = new Assessor(desk, jobs, this::writeWhole);
        this.written = desk.state().orElse(null);
        this.taken = written;
        thread.setDaemon(true);
        desk.listen(event -> {
            if (event.kind().equals("changed")) {
                wake();
            }
        });
    }

    void start() {
        thread.start();
        assessor.wake();
    }

    private synchronized void wake() {
        isWaiting = true;
        notifyAll();
    }

    /** Returns when everything is written. */
    @Override
    public void close() {
        synchronized (this) {
            isClosing = true;
            notifyAll();
        }
        try {
            thread.join();
            assessor.close();
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }

    private void keep() {
        while (true) {
            lookAtFiles();
            write();
            synchronized (this) {
                if (isClosing && !isWaiting) {
                    return;
                }
                if (!isWaiting) {
                    pause();
                }
                isWaiting = false;
            }
        }
    }

    private void pause() {
        try {
            wait(LOOK_MILLIS);
        } catch (InterruptedException e) {
            isClosing = true;
        }
    }

    private void write() {
        DeskState now = desk.state().orElse(null);
        if (now == null || now == written) {
            return;
        }
        try {
            String sha256 = files.write(now.project(), now.notes());
            // Figures that take no time are there at once; bounds and the electrical checks follow.
            files.write(PlanFinisher.signed(now.project(), now.plan(), madeBy(now.plan(), sha256)));
            written = now;
            assessor.wake();
        } catch (WriteFailed e) {
            written = now;
            desk.tell("nothing could be kept: " + e.getMessage() + " What is on the screen is not in the files.");
        }
    }

    private void writeWhole(DeskState now, Plan whole) {
        if (now != written || now == taken || files.areChangedElsewhere()) {
            return;
        }
        try {
            String sha256 = files.write(now.project(), now.notes());
            files.write(whole.with()
                    .madeBy(madeBy(now.plan(), sha256))
                    .cautions(Cautions.ALL)
                    .build());
        } catch (WriteFailed e) {
            desk.tell("the figures could not be kept: " + Harmless.shown(e.getMessage()));
        }
    }

    private static MadeBy madeBy(Plan plan, String projectSha256) {
        return plan.madeBy()
                .map(by -> by.with().projectSha256(projectSha256).build())
                .orElseGet(() -> MadeBy.builder()
                        .softwareVersion(Jobs.version())
                        .projectSha256(projectSha256)
                        .seed(0)
                        .threads(1)
                        .movesAllowed(OptionalLong.of(0))
                        .build());
    }

    /** What another program has written comes onto the desk as a change; what cannot be read is told. */
    private void lookAtFiles() {
        if (!files.areChangedElsewhere()) {
            return;
        }
        Reading<Project> read = files.readProject();
        if (read.value().isEmpty()) {
            desk.tell("'" + files.project().getFileName() + "' was changed by another program and cannot be read: "
                    + read.problems().get(0).message() + " The desk goes on with what it has; its next change"
                    + " replaces that file.");
            return;
        }
        Project project = read.value().get();
        Optional<Reading<Plan>> plan = files.hasPlan() ? Optional.of(files.readPlan(project)) : Optional.empty();
        DeskState bare = DeskState.unplanned(project, read.notes());
        Optional<Plan> kept = plan.flatMap(Reading::value).or(() -> desk.state().map(DeskState::plan));
        DeskState next = kept.map(each -> bare.withPlan(each).under(project, read.notes()))
                .orElse(bare);
        take(next);
        assessor.wake();
    }

    private void take(DeskState theirs) {
        DeskState base = written;
        DeskState own = desk.state().orElse(null);
        written = theirs;
        taken = theirs;
        if (base == null || own == null || own == base) {
            desk.put(OTHERS, theirs);
            desk.tell("another program changed the files of this project; that is on the desk now. Undo brings back"
                    + " what was here before.");
            return;
        }
        StateMerge.Merged merged = StateMerge.of(base, own, theirs);
        if (merged.state().isEmpty()) {
            desk.put(OTHERS, theirs);
            desk.tell("another program changed the files while something was changed here, and both together make no"
                    + " sense. What the files say is on the desk now; Undo brings back what was here.");
            return;
        }
        desk.put(OTHERS + ", with what was changed here", merged.state().get());
        List<String> where = merged.contradictions();
        desk.tell("another program changed the files while something was changed here; both are on the desk now."
                + (where.isEmpty()
                        ? ""
                        : " At the same place it said something else, and its word stands: "
                                + Phrase.quoted(where, MOST_NAMED) + ". Undo brings back what was here."));
    }
}
