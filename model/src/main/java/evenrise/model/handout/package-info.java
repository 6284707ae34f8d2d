/**
 * What a page that was mailed can try: a project and its plan as one compact text, moves by hand judged by the referee, and
 * answers as text. Compiled to JavaScript with the rooms that it touches; so nothing here knows a library, a file or a
 * browser.
 *
 * <p>May touch model.answer, model.contract, model.plan, model.project, model.rules.
 */
package evenrise.model.handout;
