/**
 * Answers about a plan that is there: what each other place of a load would break or cost, what is another than in an
 * earlier plan, what is supposed otherwise.
 *
 * <p>May touch model.contract, model.plan, model.project, model.rules, model.sequence.
 */
package evenrise.model.answer;
