package evenrise.solver.desk;

import evenrise.model.file.Format;
import evenrise.model.file.ProjectFile;
import evenrise.model.file.WriteFailed;
import evenrise.solver.app.CompareRequest;
import evenrise.solver.app.Effort;
import evenrise.solver.app.JobFailed;
import evenrise.solver.app.Jobs;
import evenrise.solver.app.Source;
import evenrise.solver.desk.EstimateAnswers.EstimateView;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.time.Duration;
import java.util.List;
import java.util.Optional;

/** What the project can be built of, by price, as {@code compare} looks for it, while the work goes on. */
final class EstimateWork implements DeskPart {
    private static final double MILLIS = 1000;

    private final Desk desk;
    private final EstimateFolder folder;
    private final String name;
    private final Jobs jobs;
    private Optional<EstimateRun> last = Optional.empty();

    EstimateWork(Desk desk, DeskFiles files, Jobs jobs) {
        this.desk = desk;
        this.folder = new EstimateFolder(files);
        this.name = files.project().getFileName().toString();
        this.jobs = jobs;
    }

    @Override
    public void offer(DeskRoutes routes) {
        routes.shown("/api/estimate", "What is known of the estimate", EstimateView.class, this::view);
        routes.asked(
                "/api/estimate/begin",
                "Make-ups are looked at in order of price; their projects and plans go into a folder beside the project's"
                        + " file",
                EstimateRequests.Estimate.class,
                EstimateView.class,
                this::begin);
        routes.asked(
                "/api/estimate/stop",
                "The estimate ends with what it has",
                DeskRequests.Bare.class,
                EstimateView.class,
                any -> stop());
    }

    private synchronized EstimateView view() {
        return last.map(each -> each.view(desk.state(), folder.name()))
                .orElseGet(
                        () -> new EstimateView("none", "", 0, 0, 0, true, folder.name(), List.of(), Optional.empty()));
    }

    private synchronized EstimateView begin(EstimateRequests.Estimate asked) {
        if (last.filter(EstimateRun::isRunning).isPresent()) {
            throw new JobFailed(JobFailed.Reason.REQUEST, "an estimate is being made. Stop it first.");
        }
        DeskState state = desk.judged().state();
        EstimateRun run = new EstimateRun(state, request(state, asked), () -> desk.tell("estimate", ""));
        last = Optional.of(run);
        Thread thread = new Thread(() -> run.run(jobs), "estimate");
        thread.setDaemon(true);
        thread.start();
        return view();
    }

    private CompareRequest request(DeskState state, EstimateRequests.Estimate asked) {
        return new CompareRequest(
                stated(state),
                folder.path(),
                Optional.empty(),
                Optional.empty(),
                Effort.ofMoves(asked.moves()).withSeed(asked.seed()),
                asked.tries(),
                spare(asked),
                !asked.numbers(),
                asked.draws(),
                Optional.empty(),
                asked.limitSeconds().isPresent()
                        ? Optional.of(
                                Duration.ofMillis((long) (asked.limitSeconds().getAsDouble() * MILLIS)))
                        : Optional.empty(),
                Optional.empty());
    }

    /** With what the project's file says beside its format, which stays with every make-up. */
    private Source stated(DeskState state) {
        ByteArrayOutputStream text = new ByteArrayOutputStream();
        try {
            ProjectFile.write(state.project(), state.notes(), text, Format.JSON);
        } catch (WriteFailed e) {
            throw new IllegalStateException("memory takes what is written", e);
        }
        return Source.stream(new ByteArrayInputStream(text.toByteArray()), name);
    }

    private static Optional<CompareRequest.Spares> spare(EstimateRequests.Estimate asked) {
        boolean isAsked = asked.spareSlots().isPresent()
                || asked.spareOutputs().isPresent()
                || asked.sparePercent().isPresent();
        return isAsked
                ? Optional.of(new CompareRequest.Spares(
                        asked.spareSlots().orElse(0),
                        asked.spareOutputs().orElse(0),
                        asked.sparePercent().orElse(0)))
                : Optional.empty();
    }

    private synchronized EstimateView stop() {
        last.ifPresent(EstimateRun::stop);
        return view();
    }

    @Override
    public void close() {
        stop();
    }
}
