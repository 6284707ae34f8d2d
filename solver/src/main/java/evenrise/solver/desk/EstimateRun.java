package evenrise.solver.desk;

import evenrise.model.contract.Harmless;
import evenrise.solver.app.CancelSwitch;
import evenrise.solver.app.CompareRequest;
import evenrise.solver.app.CompareResult;
import evenrise.solver.app.EstimateState;
import evenrise.solver.app.EstimateState.Known;
import evenrise.solver.app.JobControl;
import evenrise.solver.app.JobFailed;
import evenrise.solver.app.JobListener;
import evenrise.solver.app.JobPart;
import evenrise.solver.app.JobProgress;
import evenrise.solver.app.Jobs;
import evenrise.solver.app.Stage;
import evenrise.solver.desk.EstimateAnswers.EstimateView;
import evenrise.solver.desk.EstimateAnswers.KnownView;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** One comparison by price in the background, from its first listed make-up to its end. */
final class EstimateRun {
    /** So many make-ups are told beside the sound ones, and of those that nobody has looked at so many. */
    private static final int MOST_TOLD = 1000;

    private static final int MOST_UNSEEN = 200;

    private static final int MOST_NOTES = 20;

    private final DeskState of;
    private final CompareRequest request;
    private final Runnable told;
    private final CancelSwitch cancel = new CancelSwitch();
    private final List<String> notes = new ArrayList<>();
    private String state = "running";
    private String words = "";
    private Optional<Stage> stage = Optional.empty();
    private double elapsedSeconds;
    private Optional<JobPart> part = Optional.empty();
    private Optional<EstimateState> known = Optional.empty();

    /** @param told runs whenever there is something new to be seen */
    EstimateRun(DeskState of, CompareRequest request, Runnable told) {
        this.of = of;
        this.request = request;
        this.told = told;
    }

    private final class Listener implements JobListener {
        @Override
        public void progress(JobProgress now) {
            if (at(now)) {
                told.run();
            }
        }

        @Override
        public void note(String text) {
            noted(text);
        }

        @Override
        public void part(JobPart next) {
            done(next);
            told.run();
        }

        @Override
        public void estimate(EstimateState next) {
            known(next);
            told.run();
        }
    }

    void run(Jobs jobs) {
        try {
            CompareResult result = jobs.compare(request, new JobControl(new Listener(), cancel));
            known(result.estimate());
            end(result.wasCancelled() ? "stopped" : "done", "");
        } catch (JobFailed e) {
            end("failed", Harmless.shown(e.getMessage()));
        } catch (RuntimeException e) {
            end("failed", "this should not have happened: " + Harmless.shown(String.valueOf(e)));
        }
        told.run();
    }

    private synchronized boolean at(JobProgress now) {
        elapsedSeconds = now.elapsedSeconds();
        boolean isNew = stage.filter(each -> each == now.stage()).isEmpty();
        stage = Optional.of(now.stage());
        return isNew;
    }

    private synchronized void noted(String text) {
        if (notes.size() < MOST_NOTES) {
            notes.add(text);
        }
    }

    private synchronized void done(JobPart next) {
        part = Optional.of(next);
    }

    private synchronized void known(EstimateState next) {
        known = Optional.of(next);
    }

    private synchronized void end(String how, String why) {
        state = how;
        words = why;
    }

    synchronized boolean isRunning() {
        return state.equals("running");
    }

    /** Ends soon with what it has. */
    void stop() {
        cancel.cancel();
    }

    synchronized EstimateView view(Optional<DeskState> now, String folder) {
        return new EstimateView(
                state,
                isRunning() ? stage.map(Stage::words).orElse("") : words,
                elapsedSeconds,
                part.map(JobPart::done).orElse(0),
                part.map(JobPart::of).orElse(0),
                now.filter(each -> each.project() == of.project()).isPresent(),
                folder,
                List.copyOf(notes),
                known.map(each -> new KnownView(each.makeUps().size(), shortened(each))));
    }

    private static EstimateState shortened(EstimateState all) {
        List<EstimateState.MakeUpLine> lines = new ArrayList<>();
        int told = 0;
        int unseen = 0;
        for (EstimateState.MakeUpLine each : all.makeUps()) {
            boolean isUnseen = each.known() == Known.NOT_LOOKED_AT;
            unseen += isUnseen ? 1 : 0;
            if (each.known() == Known.SOUND || told < MOST_TOLD && (!isUnseen || unseen <= MOST_UNSEEN)) {
                lines.add(each);
                told++;
            }
        }
        return all.withMakeUps(lines);
    }
}
