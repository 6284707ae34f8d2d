package evenrise.solver.app;

import evenrise.model.evaluation.Evaluation;
import evenrise.model.event.BothWays;
import evenrise.model.event.EventScript;
import evenrise.model.event.Trace;
import evenrise.model.event.Use;
import evenrise.model.file.Json;
import evenrise.model.file.WholeFile;
import evenrise.model.plan.Cautions;
import evenrise.model.project.Project;
import evenrise.model.review.Networks;
import evenrise.model.rules.Layout;
import evenrise.model.rules.SupplyVoltage;
import evenrise.model.scatter.NodeScatter;
import evenrise.model.scatter.Trials;
import evenrise.solver.report.RehearsalCsv;
import evenrise.solver.report.ScatterFile;
import evenrise.solver.table.Csv;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/** What may happen on a plan: played once, or drawn by chance many times. */
final class RehearseJob {
    private static final List<String> ORDINARY_DAY =
            List.of("on", "mains=0", "mains=100", "emergency", "release", "off");

    private final Watch watch;

    RehearseJob(Watch watch) {
        this.watch = watch;
    }

    RehearseResult run(RehearseRequest request) {
        List<Source> inputs = new ArrayList<>(List.of(request.project(), request.plan()));
        request.script().ifPresent(inputs::add);
        request.trace().ifPresent(path -> Outputs.refuseInputs(path, inputs));
        AuditJob.Subject subject = AuditJob.Subject.of(request.project(), request.plan(), watch.notes());
        Evaluation evaluation = subject.evaluation(Optional.empty());
        EventScript script = script(request, subject.project(), watch);
        watch.at(Stage.JUDGING);
        if (evaluation.assessment().isBroken()) {
            watch.notes()
                    .accept(request.plan().name()
                            + ": the plan breaks limits; evenrise audit shows them. The rehearsal plays it as it is.");
        }
        watch.at(Stage.PLAYING);
        Trace played = BothWays.of(subject.layout(), request.isIdle() ? Use.IDLE : Use.FULL, script);
        watch.at(Stage.WRITING);
        request.trace().ifPresent(path -> write(path, played));
        return new RehearseResult(evaluation, played);
    }

    TrialsResult trials(TrialsRequest request) {
        request.into().ifPresent(path -> Outputs.refuseInputs(path, List.of(request.project(), request.plan())));
        AuditJob.Subject subject = AuditJob.Subject.of(request.project(), request.plan(), watch.notes());
        Evaluation evaluation = subject.evaluation(Optional.empty());
        watch.at(Stage.TRIALS);
        List<NodeScatter> nodes = request.grid()
                .map(access -> new TrialShards(subject.layout(), watch)
                        .drawn(
                                subject.layout().plan(),
                                request.trials(),
                                request.effort().seed(),
                                Grids.of(Optional.of(access), 1, new TrialWork(), watch.notes())))
                .orElseGet(() -> scatter(subject.layout(), request.trials(), request.effort()));
        watch.at(Stage.JUDGING);
        evaluation.assessment();
        watch.at(Stage.WRITING);
        String name = subject.project().name();
        long seed = request.effort().seed();
        request.into()
                .ifPresent(path -> text(
                        path,
                        Json.of(new ScatterFile(ScatterFile.FORMAT, name, request.trials(), seed, nodes, Cautions.ALL))
                                + "\n"));
        return new TrialsResult(evaluation, nodes, request.trials(), seed);
    }

    /** The same seed draws the same, whatever the threads. */
    static List<NodeScatter> scatter(Layout layout, int trials, Effort effort) {
        return Trials.of(
                layout,
                SupplyVoltage.scatter(layout.project()),
                Networks.of(layout),
                Networks.ofTree(layout),
                trials,
                effort.seed(),
                effort.sideBySide());
    }

    private static EventScript script(RehearseRequest request, Project subject, Watch watch) {
        if (request.script().isPresent()) {
            Source source = request.script().get();
            return Inputs.told(source.name(), source.script(subject), watch.notes())
                    .value()
                    .orElseThrow();
        }
        return request.events().isEmpty()
                ? EventWords.script("an ordinary day", ORDINARY_DAY, subject)
                : EventWords.script("these events", request.events(), subject);
    }

    private static void write(Path trace, Trace played) {
        boolean isCsv = trace.toString().toLowerCase(Locale.ROOT).endsWith(".csv");
        text(trace, isCsv ? Csv.of(RehearsalCsv.values(played)) : Json.of(played) + "\n");
    }

    private static void text(Path file, String text) {
        Outputs.write(() -> WholeFile.write(file, text));
    }
}
