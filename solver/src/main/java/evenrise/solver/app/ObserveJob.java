package evenrise.solver.app;

import evenrise.model.contract.Harmless;
import evenrise.model.contract.Phrase;
import evenrise.model.intake.RecorderColumns;
import evenrise.model.observation.Observation;
import evenrise.model.observation.Observer;
import evenrise.model.observation.Recording;
import evenrise.model.observation.StartSpan;
import evenrise.model.plan.Plan;
import evenrise.model.project.Project;
import evenrise.model.project.SwitchedSystem;
import evenrise.model.rules.Distribution;
import evenrise.model.rules.Layout;
import evenrise.solver.recording.RecordingCsv;
import evenrise.solver.recording.RecordingFile;
import evenrise.solver.report.SeenStart;
import evenrise.solver.report.WaveStart;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Tells a recorded start beside a plan. */
final class ObserveJob {
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
        RecorderBook book = RecorderBook.besides(request.project().path(), watch.notes());
        List<RecorderColumns> said = book.with(request.columns());
        watch.at(Stage.JUDGING);
        RecordingCsv.Read read = read(request.recording(), said, project, request.from(), request.to());
        request.columns().ifPresent(book::keep);
        SeenStart first = seen(layout, point, system, request.recording(), read, said);
        List<SeenStart> again = new ArrayList<>();
        for (Path file : request.again()) {
            RecordingCsv.Read further = read(file, said, project, Optional.empty(), Optional.empty());
            again.add(seen(layout, point, system, file, further, said));
        }
        return new ObserveResult(first, again, point.label(), read.columns());
    }

    private static SeenStart seen(
            Layout layout,
            Distribution.Point point,
            Optional<String> system,
            Path file,
            RecordingCsv.Read read,
            List<RecorderColumns> said) {
        try {
            Recording recording =
                    StartSpan.of(layout, point.index(), system, read.recording().orElseThrow());
            Observation seen = Observer.of(layout, point.index(), system, recording);
            List<WaveStart> waves =
                    read.isWave() && seen.isRecognised() ? WaveStarts.of(layout, seen, file, said) : List.of();
            return new SeenStart(file.getFileName().toString(), seen, waves);
        } catch (IllegalArgumentException e) {
            throw new JobFailed(
                    JobFailed.Reason.REQUEST, "'" + Harmless.shown(file.toString()) + "': " + e.getMessage());
        }
    }

    static Distribution.Point point(Distribution distribution, Optional<String> at) {
        if (at.isEmpty()) {
            return distribution.points().get(Distribution.SUPPLY);
        }
        return distribution
                .point(at.get())
                .orElseThrow(() -> new JobFailed(
                        JobFailed.Reason.REQUEST,
                        "the project has no panel or node '" + Harmless.shown(at.get()) + "'."));
    }

    static Optional<String> system(Project project, Optional<String> asked) {
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

    /** @throws JobFailed that says what is wrong with it */
    static RecordingCsv.Read read(
            Path file, List<RecorderColumns> said, Project project, Optional<String> from, Optional<String> to) {
        String shown = "'" + Harmless.shown(file.toString()) + "'";
        try {
            RecordingCsv.Read read = RecordingFile.read(
                    file,
                    said,
                    project.supply().frequencyHertz(),
                    moment(from, Double.NEGATIVE_INFINITY),
                    moment(to, Double.POSITIVE_INFINITY));
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

    private static double moment(Optional<String> word, double otherwise) {
        if (word.isEmpty()) {
            return otherwise;
        }
        return RecordingCsv.moment(word.get())
                .orElseThrow(() -> new JobFailed(
                        JobFailed.Reason.REQUEST,
                        "'" + Harmless.shown(word.get())
                                + "' is no moment of a recording. Give seconds, a time of day, or date and time, as the"
                                + " recording has them."));
    }
}
