package evenrise.solver.app;

import evenrise.model.contract.Field;
import evenrise.model.plan.Cautions;
import java.util.List;

/** What was proven of a project so far, so that a later proof goes on from there. */
public record ProofRecord(
        @Field(meaning = "Name and version of this format", atLeast = 1)
        String format,

        @Field(meaning = "What whoever uses these figures has to know", optional = true)
        List<String> cautions,

        @Field(meaning = "Version of the program that proved it", atLeast = 1)
        String softwareVersion,

        @Field(meaning = "SHA-256 of the project's bytes, as it was read, hexadecimal", atLeast = 64)
        String projectSha256,

        @Field(meaning = "No plan that keeps every rule has a lesser objective, in ampere-equivalents", min = 0)
        double provenObjective,

        @Field(meaning = "Proofs that have worked on it, the one that wrote this among them", min = 1)
        int proofs) {
    static final String FORMAT = "evenrise-proof/1";

    public ProofRecord {
        cautions = List.copyOf(cautions);
    }

    static ProofRecord of(String projectSha256, double provenObjective, int proofs) {
        return new ProofRecord(FORMAT, Cautions.ALL, Jobs.version(), projectSha256, provenObjective, proofs);
    }
}
