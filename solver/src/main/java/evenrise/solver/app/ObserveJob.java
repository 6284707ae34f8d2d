package evenrise.solver.app;

import evenrise.model.contract.Harmless;
import evenrise.model.contract.Phrase;
import evenrise.model.observation.Observer;
import evenrise.model.observation.Recording;
import evenrise.model.plan.Plan;
import evenrise.model.project.Project;
import evenrise.model.project.SwitchedSystem;
import evenrise.model.rules.Distribution;
import evenrise.model.rules.Layout;
import evenrise.solver.recording.RecordingCsv;
import evenrise.solver.table.TextTable;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;

/** Tells a recorded start beside a plan. */
final class ObserveJob {
    private static final long MOST_BYTES = 256L << 20;

    private final Watch watch;

    ObserveJob(Watch watch) {
        this.watch = watch;
    }

    ObserveResult run(ObserveRequest request) {
        Project project =
                Inputs.project(request.project(), watch.notes()).value().orElseThrow();
        Plan plan = Inputs.plan(request.plan(), project, watch.notes()).value().orElseThrow();
        Layout layout = Layout.of(project, plan);
        Distribution.Point point = point(layout.distribution(), request.at());
        Optional<String> system = system(project, request.system());
        RecordingCsv.Read read = read(request.recording());
        Recording recording = read.recording().orElseThrow();
        watch.at(Stage.JUDGING);
        try {
            return new ObserveResult(
                    Observer.of(layout, point.index(), system, recording), point.label(), read.columns());
        } catch (IllegalArgumentException e) {
            throw new JobFailed(JobFailed.Reason.REQUEST, e.getMessage());
        }
    }

    private static Distribution.Point point(Distribution distribution, Optional<String> at) {
        if (at.isEmpty()) {
            return distribution.points().get(Distribution.SUPPLY);
        }
        return distribution
                .point(at.get())
                .orElseThrow(() -> new JobFailed(
                        JobFailed.Reason.REQUEST,
                        "the project has no panel or node '" + Harmless.shown(at.get()) + "'."));
    }

    private static Optional<String> system(Project project, Optional<String> asked) {
        List<String> systems =
                project.systems().stream().map(SwitchedSystem::id).toList();
        if (asked.isEmpty() && systems.size() > 1) {
            throw new JobFailed(
                    JobFailed.Reason.REQUEST,
                    "which command was recorded? Say --system with one of " + Phrase.quoted(systems, 12) + ".");
        }
        if (asked.isPresent() && !systems.contains(asked.get())) {
            throw new JobFailed(
                    JobFailed.Reason.REQUEST, "the project has no system '" + Harmless.shown(asked.get()) + "'.");
        }
        return asked.or(() -> systems.stream().findFirst());
    }

    private static RecordingCsv.Read read(Path file) {
        String shown = "'" + Harmless.shown(file.toString()) + "'";
        try {
            if (Files.size(file) > MOST_BYTES) {
                throw new JobFailed(
                        JobFailed.Reason.INPUT, shown + " is larger than 256 MB. Cut out the minutes about the start.");
            }
            RecordingCsv.Read read = RecordingCsv.read(TextTable.decoded(Files.readAllBytes(file)));
            if (read.recording().isEmpty()) {
                throw new JobFailed(
                        JobFailed.Reason.INPUT,
                        read.problems().stream()
                                .map(each -> file + ": " + Harmless.shown(each))
                                .toList());
            }
            return read;
        } catch (IOException e) {
            throw new JobFailed(
                    JobFailed.Reason.INPUT,
                    shown + " cannot be read: " + Harmless.shown(String.valueOf(e.getMessage())) + ".");
        }
    }
}
