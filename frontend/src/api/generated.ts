// Made from the OpenAPI description by `npm run api-types`. Not edited by hand.

export interface paths {
    "/api/v1/canals/{canal_id}": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        /** A canal */
        get: operations["canal_retrieve"];
        put?: never;
        post?: never;
        /** Take out a canal in which nothing was measured */
        delete: operations["canal_destroy"];
        options?: never;
        head?: never;
        /**
         * Change what is charted of a canal
         * @description That a canal was searched and not found is recorded by a supervisor.
         */
        patch: operations["canal_update"];
        trace?: never;
    };
    "/api/v1/canals/{canal_id}/bends-in-space": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        /**
         * Bends in space of a canal
         * @description Every one, the last one counts.
         */
        get: operations["bends_in_space_list"];
        put?: never;
        post?: never;
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/v1/canals/{canal_id}/bends-in-space/{bend_id}": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        /** A bend in space */
        get: operations["bend_in_space_retrieve"];
        /**
         * Combine two views of a canal
         * @description From the marks on two images the bend in space is computed, kept and charted. Kept for good: who sees it otherwise combines anew, and both stay. From then on a single image does not chart this canal's bend any more.
         */
        put: operations["bend_in_space_update"];
        post?: never;
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/v1/canals/{canal_id}/junctions": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        get?: never;
        put?: never;
        /**
         * Record where a canal joins another
         * @description Kept for good; the last one counts. The canal's length of that moment is kept with it, so that a later correction does not move the junction.
         */
        post: operations["junctions_create"];
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/v1/canals/{canal_id}/readings": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        /** Readings of a canal */
        get: operations["readings_list"];
        put?: never;
        /**
         * Take a length
         * @description Readings are kept for good: a later one is added. The answer says what they come to.
         */
        post: operations["readings_create"];
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/v1/cases/{case_id}": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        /**
         * A case
         * @description With its canals, what each length rests on, and where the plan stands. ETag: its revision, and what else is shown.
         */
        get: operations["case_retrieve"];
        put?: never;
        post?: never;
        delete?: never;
        options?: never;
        head?: never;
        /**
         * Change the facts of a case
         * @description Every change a plan could rest on raises the revision; plans made before are stale then. Another alias is none: the old text goes everywhere, also from the patient's other cases. `factors` replaces all that was recorded.
         */
        patch: operations["case_update"];
        trace?: never;
    };
    "/api/v1/cases/{case_id}/bands": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        /**
         * What is expected of the work that remains
         * @description By the contact-depth estimate, an estimate for teaching, brought up to date with every depth that was recorded. No part of what was approved: stops and steps stay as they are. ETag: changes with every event.
         */
        get: operations["bands_retrieve"];
        put?: never;
        post?: never;
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/v1/cases/{case_id}/canals": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        /** Canals of a case */
        get: operations["canals_list"];
        put?: never;
        /**
         * Add a canal
         * @description The canal that gets missed. Its root is made where the tooth has none of that name.
         */
        post: operations["canals_create"];
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/v1/cases/{case_id}/course.pdf": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        /**
         * The course of a case on paper
         * @description Every step of each canal as planned and as done, and every entry. It carries the record's hash.
         */
        get: operations["course_pdf"];
        put?: never;
        post?: never;
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/v1/cases/{case_id}/events": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        /**
         * What was done, and where the work stands
         * @description The state is always the fold of the events. ETag: changes with every event.
         */
        get: operations["events_list"];
        put?: never;
        /**
         * Report what was done
         * @description A batch of one device, in its order; sending it again is harmless. After a gap nothing is stored and the answer names the number expected (409). A clinical fact is never refused for coming at the wrong moment, nor for what cannot be checked any more: it is kept and set aside or marked, with the reason. An emergency that nothing else may hold up comes from a device of its own, named by the event's own id. What is done is told by who works the case, its student or a supervisor who took over; from anybody else it is refused (403).
         */
        post: operations["events_create"];
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/v1/cases/{case_id}/external-id": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        get?: never;
        /**
         * Say by which key your service knows a case
         * @description By a service, for itself: other services have other keys, and see neither this one nor each other's. One key is of one thing of its kind. Sent again it changes nothing; another takes its place.
         */
        put: operations["case_external_id_update"];
        post?: never;
        /**
         * Know a case by no key any more
         * @description The thing itself stays. 204 also where there was none.
         */
        delete: operations["case_external_id_destroy"];
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/v1/cases/{case_id}/images": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        /**
         * Every image of the case, and what is left of the quota
         * @description An image that an event names and that is not listed is still where it was taken. ETag: changes with whatever is answered.
         */
        get: operations["images_list"];
        put?: never;
        /**
         * Send an image as a form
         * @description One image as multipart/form-data; to send it again harmlessly, make its id and use PUT. What is kept is drawn anew from the pixels: place, device and everything else that came with them is gone. Of DICOM a de-identified data set is built from pixels and spacing. The received bytes are not kept: parts of an upload wait in the database and leave it once the image is stored or refused, SQLite's file and log at once, PostgreSQL's table with the daily tidying and its log when that is used again. A backup made meanwhile, or a log kept for one, holds what it holds until it is thrown away.
         */
        post: operations["images_create"];
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/v1/cases/{case_id}/images/{image_id}": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        /**
         * What is known of an image
         * @description `Upload-Offset` says from which byte its upload goes on.
         */
        get: operations["image_retrieve"];
        /**
         * Send an image whole
         * @description JPEG, PNG, WebP, TIFF, DICOM, or HEIC where the server has the extra that reads it, found out by its content. The same bytes under the same id are answered the same. Others begin anew while nothing of the image is kept, and are refused once it is (409). What is kept is drawn anew from the pixels: place, device and everything else that came with them is gone. Of DICOM a de-identified data set is built from pixels and spacing. The received bytes are not kept: parts of an upload wait in the database and leave it once the image is stored or refused, SQLite's file and log at once, PostgreSQL's table with the daily tidying and its log when that is used again. A backup made meanwhile, or a log kept for one, holds what it holds until it is thrown away.
         */
        put: operations["image_update"];
        post?: never;
        delete?: never;
        options?: never;
        head?: never;
        /**
         * Send the next part of an image
         * @description After the draft for resumable uploads (draft-ietf-httpbis-resumable-upload): `Upload-Offset`, `Upload-Length`, media type `application/partial-upload`; GET or HEAD of the image says from which byte to go on. It differs in one thing: the sender makes the id, so the part at byte 0 begins the upload. Where another byte is next, the answer names it as `expected` (409). A part that came before counts once. The last part is answered with the stored image. What is kept is drawn anew from the pixels: place, device and everything else that came with them is gone. Of DICOM a de-identified data set is built from pixels and spacing. The received bytes are not kept: parts of an upload wait in the database and leave it once the image is stored or refused, SQLite's file and log at once, PostgreSQL's table with the daily tidying and its log when that is used again. A backup made meanwhile, or a log kept for one, holds what it holds until it is thrown away.
         */
        patch: operations["image_partial_update"];
        trace?: never;
    };
    "/api/v1/cases/{case_id}/images/{image_id}/content": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        /**
         * The image for screens
         * @description A file of a stored image. It is asked for again each time: another person may sit at the same browser.
         */
        get: operations["image_content_retrieve"];
        put?: never;
        post?: never;
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/v1/cases/{case_id}/images/{image_id}/data-set": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        /**
         * The de-identified DICOM data set
         * @description A file of a stored image. It is asked for again each time: another person may sit at the same browser.
         */
        get: operations["image_data_set_retrieve"];
        put?: never;
        post?: never;
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/v1/cases/{case_id}/images/{image_id}/markings": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        /**
         * What was marked on an image
         * @description Every marking, those that were corrected as well.
         */
        get: operations["markings_list"];
        put?: never;
        post?: never;
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/v1/cases/{case_id}/images/{image_id}/markings/{marking_id}": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        /** A marking */
        get: operations["marking_retrieve"];
        /**
         * Mark an image
         * @description Marks are measured and kept for good; who marks again or corrects another adds a marking. A length that is taken becomes a reading of its canal like any other, and its bend is charted.
         */
        put: operations["marking_update"];
        post?: never;
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/v1/cases/{case_id}/images/{image_id}/move": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        get?: never;
        put?: never;
        /**
         * Put an image to the canal it is of
         * @description By somebody who may change the case. Lengths and bends that were taken from it for the canal where it was count no more; that canal's hold point waits for another image. Where it was stays listed.
         */
        post: operations["image_move"];
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/v1/cases/{case_id}/images/{image_id}/name-check": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        get?: never;
        put?: never;
        /**
         * Say that nobody is named in an image
         * @description By somebody who may change the case and has looked: no name and no number of a person is written in the picture. Who said so first is kept. Where somebody is named, remove the image instead.
         */
        post: operations["image_name_check"];
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/v1/cases/{case_id}/images/{image_id}/remove": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        get?: never;
        put?: never;
        /**
         * Remove an image
         * @description By somebody who may change the case, also while its upload is under way. The picture is deleted and counts no more against the quota; the image stays listed as removed, by whom and why, with what was marked on it. Its files and its bytes sent again are answered with 410. The first removal stays; a refused image stays refused. Backups of the store and of the database are not reached from here: they hold it until they are thrown away.
         */
        post: operations["image_remove"];
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/v1/cases/{case_id}/images/{image_id}/strike": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        get?: never;
        put?: never;
        /**
         * Strike an image that was a mistake
         * @description By somebody who may change the case. It stays to be looked at, with who struck it, when and why, and counts for nothing: lengths and bends taken from it are struck or charted anew, and no hold point counts it as its image. The first strike stays.
         */
        post: operations["image_strike"];
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/v1/cases/{case_id}/images/{image_id}/thumbnail": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        /**
         * The image, small
         * @description A file of a stored image. It is asked for again each time: another person may sit at the same browser.
         */
        get: operations["image_thumbnail_retrieve"];
        put?: never;
        post?: never;
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/v1/cases/{case_id}/on-site-sign-offs": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        get?: never;
        put?: never;
        /**
         * A supervisor's sign-off on the student's phone
         * @description Online only. The code is the named supervisor's, counts once, and only for the hold point at which the canal waits on this plan: 409, `hold-point-answered`, where it waits there no more. The event is the supervisor's, with `on_site`. 422 for a code that does not count; after five wrong ones, 429 for fifteen minutes.
         */
        post: operations["on_site_sign_offs_create"];
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/v1/cases/{case_id}/overrides": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        /**
         * What supervisors let pass in a case
         * @description Those taken back too.
         */
        get: operations["overrides_list"];
        put?: never;
        /**
         * Let the work go on in spite of a caution
         * @description By a supervisor, with a reason, of a caution that the version that stands carries and that says `may_override`. The case's revision rises: the plan is made again, the withheld steps open, the caution stays and shows the reason. A wide canal is let pass by choosing its final size. 422 where nobody may let it pass, and where the canal cannot be planned with the size chosen.
         */
        post: operations["overrides_create"];
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/v1/cases/{case_id}/plan-versions": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        /** Versions of a case's plan */
        get: operations["plan_versions_list"];
        put?: never;
        /**
         * Keep the plan as a version
         * @description It stands in the place of any other version: one that waits or is approved is superseded. The same content is the same version. 201 for a new one, 200 for one that was there.
         */
        post: operations["plan_versions_create"];
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/v1/cases/{case_id}/preview": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        get?: never;
        put?: never;
        /**
         * The plan as it would be
         * @description Nothing is stored. Change one choice and see what else moves.
         */
        post: operations["case_preview"];
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/v1/cases/{case_id}/preview/changes": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        get?: never;
        put?: never;
        /**
         * How the plan's input would differ from a version's
         * @description Every field of it, each with what it bears on; no plan is made.
         */
        post: operations["case_preview_changes"];
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/v1/cases/{case_id}/record": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        /**
         * The record of a case
         * @description The whole course as a timeline, and what it comes to: lengths and what they rest on, work done against work planned, irrigants, instruments, sign-offs at hold points, halts, visits. A training record. ETag: the hash.
         */
        get: operations["record_retrieve"];
        put?: never;
        post?: never;
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/v1/cases/{case_id}/record.pdf": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        /**
         * The record of a case on paper
         * @description A4 that letter paper does not cut, in black and white: planned against done, what was not as planned, decisions, what was measured and used, and images, for whoever may see them. It carries the record's hash; the same record is the same bytes.
         */
        get: operations["record_pdf"];
        put?: never;
        post?: never;
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/v1/cases/{case_id}/roots/{name}": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        get?: never;
        /**
         * Say how the canals of a root run
         * @description Where two join, a person chooses which one goes to the common terminus.
         */
        put: operations["root_update"];
        post?: never;
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/v1/compute/curvature": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        get?: never;
        put?: never;
        /**
         * Angle, radius and arc of a curved canal
         * @description From points tapped on an image: by Schneider, by tangents, by three points, as one arc, and in space from two views; with what each published scheme calls the angle. The schemes differ.
         */
        post: operations["compute_curvature"];
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/v1/compute/length": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        get?: never;
        put?: never;
        /**
         * The working length of one canal
         * @description Readings are ranked, never averaged. Readings that disagree leave the length unsettled.
         */
        post: operations["compute_length"];
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/v1/compute/measure": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        get?: never;
        put?: never;
        /**
         * Lengths and bends from marks on an image
         * @description Marks are pixels along each canal. The scale is worked out from an object of known length that was marked, else from what the image file says; the answer says what it rests on and how sure every number is. Without a scale there are angles and ratios alone. Nothing is stored, and no image is sent.
         */
        post: operations["compute_measure"];
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/v1/compute/plan": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        get?: never;
        put?: never;
        /**
         * The plan of a whole tooth
         * @description Everything the plan rests on goes in; the same input gives the same plan. Nothing is stored.
         */
        post: operations["compute_plan"];
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/v1/compute/run-sheet": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        get?: never;
        put?: never;
        /**
         * The order of work of one canal
         * @description A finite graph of steps. Depths in it are whole micrometres; everywhere else lengths are in mm.
         */
        post: operations["compute_run_sheet"];
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/v1/compute/technique-check": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        get?: never;
        put?: never;
        /**
         * Whether a technique can be used
         * @description The text of a technique of one's own, as TOML. It is read, held against the rules of techniques and tried out in every setting it is for: every walk through its order of work has to end. What is wrong is answered all at once, each fault with its `line`. Nothing is stored: a coordinator adds it to the programme's techniques.
         */
        post: operations["compute_technique_check"];
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/v1/compute/tooth": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        get?: never;
        put?: never;
        /**
         * A tooth from its name in any notation
         * @description A designation without its notation is refused, with the teeth it could be.
         */
        post: operations["compute_tooth"];
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/v1/compute/two-views": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        get?: never;
        put?: never;
        /**
         * What two views of one root tell together
         * @description Which of two lines lies towards the tongue, by the way they came apart when the tube moved; and the angle of a bend in space, from its angles in both views.
         */
        post: operations["compute_two_views"];
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/v1/consents": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        /** Clients that act for you */
        get: operations["consents_list"];
        put?: never;
        post?: never;
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/v1/consents/{consent_id}": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        get?: never;
        put?: never;
        post?: never;
        /**
         * Let a client act for you no more
         * @description At once: its tokens count no more.
         */
        delete: operations["consent_destroy"];
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/v1/difficulty-factors": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        /**
         * What can make a case difficult
         * @description Factors with their levels. Those a plan works out may be recorded as well; the higher level counts. One high factor or three moderate ones make a case high. Open to all.
         */
        get: operations["difficulty_factors_list"];
        put?: never;
        post?: never;
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/v1/guide/{page}": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        /**
         * What changed in the API, and a tour through it
         * @description `changes` also says how something ends: what is marked with `Deprecation` answers on for a year at least. Open to all.
         */
        get: operations["guide_retrieve"];
        put?: never;
        post?: never;
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/v1/instrument-sizes": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        /**
         * The ISO 3630-1 series
         * @description Sizes, colours, and the diameter 16 mm from the tip at taper .02. Open to all.
         */
        get: operations["instrument_sizes_list"];
        put?: never;
        post?: never;
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/v1/join": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        get?: never;
        put?: never;
        /**
         * Join a programme with the account that is signed in
         * @description Uses the link up. 409 for who belongs to the programme already.
         */
        post: operations["join"];
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/v1/join/link": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        get?: never;
        put?: never;
        /**
         * What a link leads to
         * @description For whoever has the link. Changes nothing. 410 for a link that does not count, 429 after too many that are none.
         */
        post: operations["join_look"];
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/v1/join/new-account": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        get?: never;
        put?: never;
        /**
         * Join with a new account
         * @description Uses the link up: makes the account, and signs it in. What the invitation gives of the names counts. Whoever has an account signs in and joins with that.
         */
        post: operations["join_new_account"];
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/v1/junctions/{reading_id}": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        /** A junction */
        get: operations["junction_retrieve"];
        put?: never;
        post?: never;
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/v1/junctions/{reading_id}/strike": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        get?: never;
        put?: never;
        /**
         * Strike a junction that was a mistake
         * @description It stays, with who struck it, when and why, and counts for nothing. Work on its canal waits for a new plan.
         */
        post: operations["junction_strike"];
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/v1/key": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        /**
         * The key or token that this request came with
         * @description 404 where it came with none.
         */
        get: operations["key_retrieve"];
        put?: never;
        post?: never;
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/v1/keys": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        /** Keys of your scripts */
        get: operations["keys_list"];
        put?: never;
        /**
         * Make a key for a script of yours
         * @description It may what you may, and of that what its scopes open. Asks for your password once more; a new password ends it.
         */
        post: operations["keys_create"];
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/v1/keys/{key_id}": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        /** A key of yours */
        get: operations["key_of_yours_retrieve"];
        put?: never;
        post?: never;
        /** Revoke a key of yours */
        delete: operations["key_destroy"];
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/v1/one-time-code": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        /** Whether codes of yours count */
        get: operations["one_time_code_retrieve"];
        put?: never;
        /**
         * Make a new secret for one-time codes
         * @description For supervisors. RFC 6238 with its usual choices: SHA-1, 30 seconds, six digits. Shown this once and kept nowhere. It counts once a first code was confirmed; until then an earlier one goes on to count. The password is asked for once more.
         */
        post: operations["one_time_code_create"];
        /**
         * Let no code count any more
         * @description Harmless where none did.
         */
        delete: operations["one_time_code_destroy"];
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/v1/one-time-code/confirm": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        get?: never;
        put?: never;
        /**
         * Confirm a new secret by its first code
         * @description 422 for a code that does not count, 429 after five of them.
         */
        post: operations["one_time_code_confirm"];
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/v1/overrides/{override_id}": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        /** An override */
        get: operations["override_retrieve"];
        put?: never;
        post?: never;
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/v1/overrides/{override_id}/withdraw": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        get?: never;
        put?: never;
        /**
         * Take it back
         * @description By a supervisor. It stays in the record; the next version withholds again.
         */
        post: operations["override_withdraw"];
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/v1/plan-versions/{version_id}": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        /**
         * A version of a plan
         * @description What was decided, and where the case's plan stands; with `expand` all it rests on and all it says. ETag: the hash, and what else is shown.
         */
        get: operations["plan_version_retrieve"];
        put?: never;
        post?: never;
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/v1/plan-versions/{version_id}/changes": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        /** What changed since an earlier version */
        get: operations["plan_version_changes"];
        put?: never;
        post?: never;
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/v1/plan-versions/{version_id}/release": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        get?: never;
        put?: never;
        /**
         * Release canals that an approval left out
         * @description By a supervisor, for exactly the version on the screen (If-Match). A canal goes together with the one it ends in. Harmless where it was released before. 409 where the plan is not approved or the case has changed.
         */
        post: operations["plan_version_release"];
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/v1/plan-versions/{version_id}/reviews": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        get?: never;
        put?: never;
        /**
         * Approve or return a plan
         * @description By a supervisor of the programme, for exactly the version on the screen: its hash goes with it as If-Match (428 without, 412 for another). A returned plan needs a note or a remark. An approval may leave canals out: those whose remark says `returned`, and what ends in one with them. 409 where another supervisor was first or the case has changed; 422, `not-acknowledged`, where an approval does not name every caution of severity `stop` that was not let pass.
         */
        post: operations["reviews_create"];
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/v1/plan-versions/{version_id}/reviews/{review_id}": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        /** A decision */
        get: operations["review_retrieve"];
        put?: never;
        post?: never;
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/v1/plan-versions/{version_id}/revoke": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        get?: never;
        put?: never;
        /**
         * Withdraw an approval
         * @description By the supervisor who gave it or a coordinator, with a reason, for exactly the version on the screen (If-Match). Work halts at its next step until a plan is approved again; what was done stays, and so does the approval as an entry. 409 where the plan is not approved. 201, or 200 where it was sent before.
         */
        post: operations["plan_version_revoke"];
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/v1/plan-versions/{version_id}/submit": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        get?: never;
        put?: never;
        /**
         * Ask for approval
         * @description 409 where the case has changed since: plan it again. If-Match is honoured where it is sent: 412 for another hash than the version's.
         */
        post: operations["plan_version_submit"];
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/v1/plan-versions/{version_id}/texts/{hash_}": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        /**
         * What a version was made from and what it says
         * @description By the version's hash: what lies there never changes, and a browser may keep it for a year, for who is signed in. Sent compressed as it is stored to whoever takes gzip.
         */
        get: operations["plan_version_texts"];
        put?: never;
        post?: never;
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/v1/plan-versions/{version_id}/withdraw": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        get?: never;
        put?: never;
        /** Take the asking back */
        post: operations["plan_version_withdraw"];
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/v1/plan-versions/{version_id}/work-sheet.pdf": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        /**
         * A plan on one sheet, for the tray
         * @description A4 that letter paper does not cut, in black and white: the board, stops by instrument and canal, what to lay out, irrigation, cautions. It says plainly where the plan is not approved.
         */
        get: operations["work_sheet_pdf"];
        put?: never;
        post?: never;
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/v1/practice-exercises/{exercise_id}": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        /**
         * An exercise
         * @description With what was done in it and what is due. What was hidden is shown once it is ended.
         */
        get: operations["practice_exercise_retrieve"];
        put?: never;
        post?: never;
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/v1/practice-exercises/{exercise_id}/acts": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        get?: never;
        put?: never;
        /**
         * Do something in an exercise
         * @description By its student: work the step that is due, skip it, or put in another instrument. A prediction comes with it. The answer says where the instrument stopped and what came of it.
         */
        post: operations["practice_acts_create"];
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/v1/practice-exercises/{exercise_id}/end": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        get?: never;
        put?: never;
        /**
         * End an exercise and see what was hidden
         * @description By its student, at any time. It is scored where all canals are worked.
         */
        post: operations["practice_exercise_end"];
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/v1/problems": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        /**
         * What can be refused, by code
         * @description Open to all.
         */
        get: operations["problems_list"];
        put?: never;
        post?: never;
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/v1/problems/{code}": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        /**
         * What a code means, and what to do
         * @description The address that the `type` of a problem names. Open to all.
         */
        get: operations["problem_retrieve"];
        put?: never;
        post?: never;
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/v1/programmes/{programme_id}": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        /** A programme of yours */
        get: operations["programme_retrieve"];
        put?: never;
        post?: never;
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/v1/programmes/{programme_id}/cases": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        /**
         * Cases of the programme, newest first
         * @description Students see their own; supervisors and coordinators all of the programme. Of several filters all hold. 400 for a filter that is not known.
         */
        get: operations["cases_list"];
        put?: never;
        /**
         * Open a case
         * @description The tooth opens with its usual canals. Every tooth can be charted; whether it can be planned here is said when it is planned. A service names the student whose case it is; the record says who entered it.
         */
        post: operations["cases_create"];
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/v1/programmes/{programme_id}/cases/by-external-id/{external_id}": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        /** The case that your service knows by this key */
        get: operations["case_by_external_id_retrieve"];
        /**
         * Open a case, or change it, by the key that your service knows it by
         * @description Opens the case for the student, with the tooth's usual canals, where your service knows none by the key; else changes what is different. What is not sent stays as it is. The same sent again changes nothing. The key of a row in the other system. Names, dates of birth and numbers of people have no place in it.
         */
        put: operations["case_by_external_id_update"];
        post?: never;
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/v1/programmes/{programme_id}/changes": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        /**
         * What changed, in order
         * @description For a system that keeps a copy. Every change of the programme has a position; there is none without one, none is left out, and what is committed later has a later one. They stay for good, through a restored backup and a move to another database. Students see the changes of their own cases, and positions between belong to others. To begin, ask with `after=last`, keep `next`, copy what there is; then ask with `next` and read each `address` anew, once however often it is named; images and people need their own scopes. Handling a change twice has to be harmless: keep `next` once a page is worked off. 409 `not-of-this-feed`: the database lost what you had read, begin anew.
         */
        get: operations["programme_changes"];
        put?: never;
        post?: never;
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/v1/programmes/{programme_id}/clients": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        /**
         * Clients of the programme
         * @description For the coordinator.
         */
        get: operations["clients_list"];
        put?: never;
        /**
         * Register a client
         * @description By the coordinator, who is asked for the password once more. One that acts for itself is the programme's service, as with a key. One that acts for people asks each of them at `/oauth/authorize`, with PKCE (S256), and has of its scopes what the person's role leaves open, in this programme alone.
         */
        post: operations["clients_create"];
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/v1/programmes/{programme_id}/clients/{client_id}": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        /**
         * A client
         * @description For the coordinator.
         */
        get: operations["client_retrieve"];
        put?: never;
        post?: never;
        /**
         * Revoke a client
         * @description With all its tokens.
         */
        delete: operations["client_destroy"];
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/v1/programmes/{programme_id}/export": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        /**
         * The tables that can be exported
         * @description Each with its columns, their units and what they mean. Ask for this first and keep `changes_after`; read each table from its first row, then from `next` in the `Link` header until there is none. The rows are in the order of `id`, the first column: a download that broke off goes on `after` the last whole line. All pages put together are one file. People stand in it by their ids alone.
         */
        get: operations["programme_export"];
        put?: never;
        post?: never;
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/v1/programmes/{programme_id}/export/{table}.csv": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        /**
         * Rows of a table as CSV
         * @description RFC 4180 in UTF-8, the same values as the lines of JSON. The names stand above the first row of all. What is empty is an empty cell; a text that a table program would take for a formula has an apostrophe before it, and so has one that begins with an apostrophe.
         */
        get: operations["programme_export_csv"];
        put?: never;
        post?: never;
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/v1/programmes/{programme_id}/export/{table}.ndjson": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        /**
         * Rows of a table, each a line of JSON
         * @description What is empty is null. Of several filters all hold: the rows are those of the cases that fit. What is of the programme itself, such as people and kits, takes none.
         */
        get: operations["programme_export_ndjson"];
        put?: never;
        post?: never;
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/v1/programmes/{programme_id}/figures": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        /**
         * The figures that plans rest on
         * @description Each with its source, how it is known, and how far a programme's own value may lie from it.
         */
        get: operations["programme_figures_list"];
        put?: never;
        post?: never;
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/v1/programmes/{programme_id}/figures/{key}": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        get?: never;
        /**
         * Set a figure of the programme's own
         * @description By the coordinator, logged. Plans made from now on rest on it and say so; those that exist keep theirs.
         */
        put: operations["programme_figure_update"];
        post?: never;
        /** Go back to the published figure */
        delete: operations["programme_figure_destroy"];
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/v1/programmes/{programme_id}/former-people": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        /**
         * Who belonged to the programme
         * @description For the coordinator, in the order in which they went.
         */
        get: operations["programme_former_people_list"];
        put?: never;
        post?: never;
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/v1/programmes/{programme_id}/invitations": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        /**
         * Who was invited
         * @description For the coordinator, the newest first. Links are not shown again.
         */
        get: operations["invitations_list"];
        put?: never;
        /**
         * Invite people
         * @description By the coordinator. Each gets a link of their own, by which they choose a password and join. Who belongs to the programme already or has a link that counts is left out, by the user name: the same sent again invites nobody twice. All are invited, or on a refusal nobody.
         */
        post: operations["invitations_create"];
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/v1/programmes/{programme_id}/invitations/{invitation_id}": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        /**
         * An invitation
         * @description For the coordinator. Its link is not shown again.
         */
        get: operations["invitation_retrieve"];
        put?: never;
        post?: never;
        /**
         * Withdraw an invitation
         * @description By the coordinator. Its link counts no more. Nobody who has joined is put out by it (409).
         */
        delete: operations["invitation_destroy"];
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/v1/programmes/{programme_id}/invitations/{invitation_id}/link": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        get?: never;
        put?: never;
        /**
         * Make another link for an invitation
         * @description By the coordinator, for a link that was lost, withdrawn or has ended. The one before counts no more.
         */
        post: operations["invitation_renew"];
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/v1/programmes/{programme_id}/kits": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        /** Kits of the programme */
        get: operations["kits_list"];
        put?: never;
        /**
         * Add a kit
         * @description By the coordinator. Speed and torque are typed in from the maker's instructions. Plans copy the kit: nothing done here touches a plan that exists.
         */
        post: operations["kits_create"];
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/v1/programmes/{programme_id}/kits/{kit_id}": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        /** A kit */
        get: operations["kit_retrieve"];
        put?: never;
        post?: never;
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/v1/programmes/{programme_id}/kits/{kit_id}/external-id": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        get?: never;
        /**
         * Say by which key your service knows a kit
         * @description By a service, for itself: other services have other keys, and see neither this one nor each other's. One key is of one thing of its kind. Sent again it changes nothing; another takes its place.
         */
        put: operations["kit_external_id_update"];
        post?: never;
        /**
         * Know a kit by no key any more
         * @description The thing itself stays. 204 also where there was none.
         */
        delete: operations["kit_external_id_destroy"];
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/v1/programmes/{programme_id}/lti-platforms": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        /**
         * Platforms whose courses lead here (LTI 1.3)
         * @description For the coordinator.
         */
        get: operations["lti_platforms_list"];
        put?: never;
        /**
         * Register a platform
         * @description By the coordinator, who is asked for the password once more: whoever runs the platform can sign people in. Left out, it is active and its teachers do not sign in. There, this tool's addresses are `/lti/login`, `/lti/launch` and `/lti/keys` of this server.
         */
        post: operations["lti_platforms_create"];
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/v1/programmes/{programme_id}/lti-platforms/{platform_id}": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        /**
         * A platform
         * @description For the coordinator.
         */
        get: operations["lti_platform_retrieve"];
        /**
         * Change a platform, or switch it off
         * @description All of it anew, by the coordinator, who is asked for the password once more. Who came from it stays who they are. Grades that it did not take are sent once more, those given up too.
         */
        put: operations["lti_platform_update"];
        post?: never;
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/v1/programmes/{programme_id}/people": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        /**
         * Who belongs to the programme
         * @description For supervisors and coordinators, and services that enter cases for a student.
         */
        get: operations["programme_people_list"];
        put?: never;
        post?: never;
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/v1/programmes/{programme_id}/people-list-check": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        get?: never;
        put?: never;
        /**
         * Look at a list of people before they are invited
         * @description For the coordinator. Says of each line who would be invited, and what is wrong, by line and column. Nothing is changed: invite the `person` of each line that is `new`.
         */
        post: operations["people_list_check"];
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/v1/programmes/{programme_id}/people/{person_id}": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        /**
         * Somebody who belongs to the programme
         * @description For supervisors and coordinators, and services that enter cases for a student.
         */
        get: operations["programme_person_retrieve"];
        put?: never;
        post?: never;
        /**
         * End what somebody is in the programme
         * @description By the coordinator. From the next request on they see nothing of it, are told nothing, and keys, clients and webhooks in their name reach nothing here. Their cases stay, and records name them as before. The only coordinator cannot go (409).
         */
        delete: operations["programme_person_destroy"];
        options?: never;
        head?: never;
        /**
         * Change what somebody is in the programme
         * @description By the coordinator: role, group, and until which day a student may treat patients. Their rights are others from the next request on. The only coordinator stays one, and who has cases as a student stays a student (409).
         */
        patch: operations["programme_person_partial_update"];
        trace?: never;
    };
    "/api/v1/programmes/{programme_id}/people/{person_id}/external-id": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        get?: never;
        /**
         * Say by which key your service knows a person
         * @description By a service, for itself: other services have other keys, and see neither this one nor each other's. One key is of one thing of its kind. Sent again it changes nothing; another takes its place.
         */
        put: operations["person_external_id_update"];
        post?: never;
        /**
         * Know a person by no key any more
         * @description The thing itself stays. 204 also where there was none.
         */
        delete: operations["person_external_id_destroy"];
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/v1/programmes/{programme_id}/practice": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        /**
         * What can be practised
         * @description And how far you are. Nothing has to be set up: an exercise is begun with an empty body.
         */
        get: operations["practice_retrieve"];
        put?: never;
        post?: never;
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/v1/programmes/{programme_id}/practice-exercises": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        /**
         * Exercises, newest first
         * @description Students see their own; supervisors all of the programme.
         */
        get: operations["practice_exercises_list"];
        put?: never;
        /**
         * Begin an exercise
         * @description By a student. The server draws a hidden canal; it is shown once the exercise is ended. A task is begun once: begun again, the exercise of before is answered.
         */
        post: operations["practice_exercises_create"];
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/v1/programmes/{programme_id}/practice-tasks": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        /**
         * Tasks of practice, newest first
         * @description Students see what is set for their group and what they have begun; supervisors all.
         */
        get: operations["practice_tasks_list"];
        put?: never;
        /**
         * Set practice as a task
         * @description By a supervisor, for a group or all students. All work the same hidden canal, which stays hidden from each student until their own exercise is ended; a supervisor sees it in every exercise that is.
         */
        post: operations["practice_tasks_create"];
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/v1/programmes/{programme_id}/practice-tasks/{task_id}": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        /** A task of practice */
        get: operations["practice_task_retrieve"];
        put?: never;
        post?: never;
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/v1/programmes/{programme_id}/practice-tasks/{task_id}/withdraw": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        get?: never;
        put?: never;
        /**
         * Withdraw a task of practice
         * @description By a supervisor. Nobody begins it any more; what was begun is worked on and stays.
         */
        post: operations["practice_task_withdraw"];
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/v1/programmes/{programme_id}/running-work": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        /**
         * Work that goes on: halted first, then what waits longest, then what went on last
         * @description ETag: changes with all that is shown, times told in whole minutes.
         */
        get: operations["running_work"];
        put?: never;
        post?: never;
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/v1/programmes/{programme_id}/service-keys": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        /**
         * Keys of the programme's services
         * @description For the coordinator.
         */
        get: operations["service_keys_list"];
        put?: never;
        /**
         * Make a key for a service
         * @description By the coordinator, who is asked for the password once more. A service sees the programme; what it enters, it enters for a named student, and the record says so. It never has `reviews:write` or `events:write`. A second key of the same name is the same service's: change over, then revoke the first.
         */
        post: operations["service_keys_create"];
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/v1/programmes/{programme_id}/service-keys/{key_id}": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        /**
         * A service's key
         * @description For the coordinator.
         */
        get: operations["service_key_retrieve"];
        put?: never;
        post?: never;
        /** Revoke a service's key */
        delete: operations["service_key_destroy"];
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/v1/programmes/{programme_id}/techniques": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        /**
         * Techniques to choose from
         * @description Those provided with the planner, and the programme's own.
         */
        get: operations["programme_techniques_list"];
        put?: never;
        /**
         * Add a technique of the programme's own
         * @description By the coordinator. A technique is data: copy a provided one, give it a key of its own, change it. It may be sent as TOML too. `compute/technique-check` says what would be wrong and keeps nothing.
         */
        post: operations["programme_techniques_create"];
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/v1/programmes/{programme_id}/techniques/{key}": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        /** A technique to choose from */
        get: operations["programme_technique_retrieve"];
        put?: never;
        post?: never;
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/v1/programmes/{programme_id}/webhooks": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        /**
         * Webhooks of the programme
         * @description A service sees its own; the coordinator sees all.
         */
        get: operations["webhooks_list"];
        put?: never;
        /**
         * Have a system told of changes
         * @description By a service with a key that has `cases:read` too, or by the coordinator. It is told as long as a key of the service has both, or the coordinator is one; what it was not told meanwhile comes later. The server keeps the secret, as it signs with it, and shows it this once.
         */
        post: operations["webhooks_create"];
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/v1/programmes/{programme_id}/webhooks/{webhook_id}": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        /** A webhook */
        get: operations["webhook_retrieve"];
        put?: never;
        post?: never;
        /**
         * Remove a webhook
         * @description With the log of its deliveries.
         */
        delete: operations["webhook_destroy"];
        options?: never;
        head?: never;
        /**
         * Change a webhook, pause it, or go on
         * @description What waits then goes to the new address. Other kinds count for changes that are not yet waiting.
         */
        patch: operations["webhook_update"];
        trace?: never;
    };
    "/api/v1/programmes/{programme_id}/webhooks/{webhook_id}/deliveries": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        /**
         * Messages to a webhook, the newest first
         * @description What waits, and for 30 days what was sent.
         */
        get: operations["webhook_deliveries_list"];
        put?: never;
        /**
         * Send a test message
         * @description Once. Read it again to see what came of it.
         */
        post: operations["webhook_deliveries_create"];
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/v1/programmes/{programme_id}/webhooks/{webhook_id}/deliveries/{delivery_id}": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        /** A message to a webhook */
        get: operations["webhook_delivery_retrieve"];
        put?: never;
        post?: never;
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/v1/programmes/{programme_id}/webhooks/{webhook_id}/replay": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        get?: never;
        put?: never;
        /**
         * Tell it again, from a position on
         * @description What waits is left aside, and what comes after the position is sent, with the ids that it had before. A later position leaves out what lies between. The webhook is active then.
         */
        post: operations["webhook_replay"];
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/v1/programmes/{programme_id}/webhooks/{webhook_id}/secret": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        get?: never;
        put?: never;
        /**
         * Turn the secret
         * @description For a day messages carry a signature by the one before too.
         */
        post: operations["webhook_secret_create"];
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/v1/programmes/{programme_id}/widths": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        /** Canal widths of the programme's own */
        get: operations["programme_widths_list"];
        put?: never;
        post?: never;
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/v1/programmes/{programme_id}/widths/{tooth}/{canal}": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        get?: never;
        /**
         * Set how wide a canal is taken to be
         * @description By the coordinator, logged. In place of the published widths of that canal, on both sides of the mouth; a canal that was measured keeps its own.
         */
        put: operations["programme_widths_update"];
        post?: never;
        /** Go back to the published widths */
        delete: operations["programme_widths_destroy"];
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/v1/programmes/{programme_id}/worklist": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        /**
         * Plans that wait, the riskiest and then the oldest first
         * @description ETag: changes with all that is shown, times told in whole minutes.
         */
        get: operations["worklist"];
        put?: never;
        post?: never;
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/v1/push-key": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        /**
         * The key by which push services know this server
         * @description RFC 8292. It stays the same; the private half never leaves the server.
         */
        get: operations["push_key_retrieve"];
        put?: never;
        post?: never;
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/v1/push-subscription": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        get?: never;
        /**
         * Notify this browser
         * @description For supervisors, of the programmes where they supervise: of an emergency, of a sign-off that is asked for, and of a canal that comes to a hold point. A browser has one owner: who says so last. A message is JSON with `case_id`, `alias`, `tooth`, `canal`, `what` (`emergency`, `asked`, `hold_point`) and `hold_point`, sealed by RFC 8291.
         */
        put: operations["push_subscription_update"];
        post?: never;
        /**
         * Notify this browser no more
         * @description Harmless where it was not notified.
         */
        delete: operations["push_subscription_destroy"];
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/v1/readings/{reading_id}": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        /** A reading */
        get: operations["reading_retrieve"];
        put?: never;
        post?: never;
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/v1/readings/{reading_id}/strike": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        get?: never;
        put?: never;
        /**
         * Strike a length that was a mistake
         * @description It stays, with who struck it, when and why, and counts for nothing. Work on its canal waits for a new plan.
         */
        post: operations["reading_strike"];
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/v1/session": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        /**
         * Who is signed in
         * @description Also sets the `csrftoken` cookie, whose value every change sends as X-CSRFToken; without it a change is answered 403 `token-missing`. That nobody is signed in is no error: 204, with the `WWW-Authenticate` of a 401, as anything between may answer with nothing.
         */
        get: operations["session_retrieve"];
        put?: never;
        /**
         * Sign in
         * @description 401 for a wrong name or password, 429 after too many wrong tries.
         */
        post: operations["session_create"];
        /**
         * Sign out
         * @description Harmless where nobody is signed in.
         */
        delete: operations["session_destroy"];
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/v1/techniques": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        /**
         * The techniques that come with the planner
         * @description A programme may copy one and make it its own. Open to all.
         */
        get: operations["techniques_list"];
        put?: never;
        post?: never;
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/v1/teeth": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        /**
         * All 52 teeth
         * @description Names in three notations, usual canals, what else to look for, published lengths. Open to all.
         */
        get: operations["teeth_list"];
        put?: never;
        post?: never;
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    "/api/v1/teeth/{iso}": {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        /**
         * One tooth
         * @description By its ISO 3950 designation. For other notations ask `compute/tooth`. Open to all.
         */
        get: operations["teeth_retrieve"];
        put?: never;
        post?: never;
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
}
export interface webhooks {
    changed: {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        get?: never;
        put?: never;
        /**
         * Something has changed
         * @description Signed after Standard Webhooks, sent at least once, and of each case one after another. Answer 2xx within 15 s, and do the work afterwards. Anything else is sent again: after 5 s, 30 s, 2 min, 10 min and 30 min, then hourly for two days, or when `Retry-After` says, up to 6 h. Until it is taken, what comes later in the case waits, and other cases go on; after 429, 502, 503, 504 and no answer at all they wait too. After two days, or at once after 410, the webhook is given up: nothing is lost, and it goes on once it is set active. Redirects are not followed.
         */
        post: operations["changed"];
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
    test: {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        get?: never;
        put?: never;
        /**
         * Nothing has changed
         * @description Sent once, when somebody asks for it.
         */
        post: operations["test"];
        delete?: never;
        options?: never;
        head?: never;
        patch?: never;
        trace?: never;
    };
}
export interface components {
    schemas: {
        /** @description What must be put right and was acknowledged by its name when the plan was approved. */
        AcknowledgedRecord: {
            /** @description The canal by its name; empty or null for the whole tooth. */
            canal: string | null;
            /** @description Which one it is, in a word that stays the same. */
            code: string;
            /** @description It in one sentence, for people. */
            says: string;
        };
        /** @description One thing that the student did. */
        Act: {
            /** @description Pushed past resistance. */
            force: boolean;
            /** @description Key in the kit, for an insertion that is not due. */
            instrument: string | null;
            /** @description Which kind it is: it tells the members of a choice apart. */
            kind: components["schemas"]["ActKind"];
            /** @description How far past the step's own stop the stop was set. */
            past_mm: number;
            /** @description Where the student expects the instrument to stop; None where no prediction was made. */
            predicted_mm: number | null;
        };
        /** @description What came of an act. */
        ActDone: {
            /** @description What the student did. */
            act: components["schemas"]["Act"];
            /** @description The canal by its name; empty or null for the whole tooth. */
            canal: string;
            /** @description Where the tip stopped; None where the step was left out. */
            depth_mm: number | null;
            /** @description Upper end, in millimetres. */
            high_mm: number | null;
            /** @description Key in the kit. */
            instrument: string;
            /** @description The prediction counts: how deep the instrument would go was not known before. */
            judged: boolean;
            /** @description Between this and `high_mm` four fifths of such canals stop it; None where the plan foresaw no such insertion. */
            low_mm: number | null;
            /** @description What was done wrong with it, and what that came to. */
            mistakes: components["schemas"]["PracticeMistake"][];
            /** @description The step in the canal's order of work. */
            node: string;
            /** @description Counts from 1. */
            number: number;
            /** @description The step's own stop. */
            stop_mm: number;
        };
        /** @description One thing that a student does in an exercise. */
        ActGivenRequest: {
            /** @description What the student does. */
            act: components["schemas"]["ActRequest"];
            /**
             * Format: uuid
             * @description Made by the sender, so that sending again is harmless.
             */
            id?: string;
        };
        /**
         * @description * `gauge`: A hand instrument that feels the size at the end; it must not cut.
         * @enum {string}
         */
        Action: "instrument" | "irrigate" | "recapitulate" | "image" | "sign_off" | "gauge" | "fit_cone" | "dry" | "fill";
        /**
         * @description What a student does in practice.
         *     * `work`: The step that is due.
         *     * `skip`: Go on without it.
         *     * `insert`: Put in an instrument that is not due.
         * @enum {string}
         */
        ActKind: "work" | "skip" | "insert";
        /** @description One thing that the student did. */
        ActRequest: {
            /**
             * @description Pushed past resistance.
             * @default false
             */
            force?: boolean;
            /**
             * @description Key in the kit, for an insertion that is not due.
             * @default null
             */
            instrument?: string | null;
            /** @description Which kind it is: it tells the members of a choice apart. */
            kind: components["schemas"]["ActKind"];
            /**
             * @description How far past the step's own stop the stop was set.
             * @default 0
             */
            past_mm?: number;
            /**
             * @description Where the student expects the instrument to stop; None where no prediction was made.
             * @default null
             */
            predicted_mm?: number | null;
        };
        /**
         * @description * `itself`: As the programme's service, by client credentials (RFC 6749, 4.4).
         *     * `people`: For each person who allows it, by an authorisation code with PKCE (4.1, and RFC 7636).
         * @enum {string}
         */
        ActsFor: "itself" | "people";
        /** @description A stored act, what came of it, and what is due after it. */
        ActShown: {
            /**
             * Format: date-time
             * @description When it was.
             */
            at: string;
            /** @description The act and what came of it. */
            done: components["schemas"]["ActDone"];
            /** @description Null: all canals are worked. */
            due: components["schemas"]["StepDue"] | null;
            /**
             * Format: uuid
             * @description Its own id.
             */
            id: string;
            /** @description Of the exercise after it: If-Match takes it. */
            revision: number;
        };
        /** @description One sentence of advice. Sentences of one `key` stand in the order in which they are done. */
        Advice: {
            /** @description What it is about. */
            about: components["schemas"]["Guidance"];
            /**
             * @description The emergency, pause or finding it belongs to, by the name under which that is recorded; for `look`, whether it
             *     holds at every chair or with patients only.
             */
            key: string;
            /** @description How it is known. */
            know: string;
            /** @description It in one sentence, for people. */
            says: string;
            /** @description Settings in which it can happen; empty for all. Without a patient nothing is swallowed and nobody is hurt. */
            settings: components["schemas"]["Setting"][];
            /** @description Where it is from. */
            source: string;
        };
        /**
         * @description A depth that was felt, against what was expected.
         * @enum {string}
         */
        Against: "as_expected" | "shorter" | "longer";
        /**
         * @description * `charted_by_supervisor`: An unusual tooth, a third molar for instance, whose canals a supervisor entered.
         * @enum {string}
         */
        Anatomy: "usual" | "fused_or_c_shaped" | "charted_by_supervisor";
        /** @description Why an instrument went past its stop. */
        AnswerPayload: {
            /** @description Id of the event that opened the question. */
            asks: string;
            /** @description `stop_moved` lets the canal go on; anything else is for the supervisor. */
            cause: components["schemas"]["PastStopCause"];
            /**
             * @description Which kind it is: it tells the members of a choice apart. (enum property replaced by openapi-typescript)
             * @enum {string}
             */
            kind: "answer";
        };
        /** @description Why an instrument went past its stop. */
        AnswerPayloadRequest: {
            /** @description Id of the event that opened the question. */
            asks: string;
            /** @description `stop_moved` lets the canal go on; anything else is for the supervisor. */
            cause: components["schemas"]["PastStopCause"];
            /**
             * @description Which kind it is: it tells the members of a choice apart. (enum property replaced by openapi-typescript)
             * @enum {string}
             */
            kind: "answer";
        };
        /** @description An electronic reading, taken twice. */
        ApexLocator: {
            /**
             * after coronal flaring
             * @description It was taken after coronal flaring.
             */
            after_flaring: boolean;
            /**
             * at the mark
             * @description The mark that was read at.
             */
            mark: components["schemas"]["LocatorMark"];
            /**
             * @description How it was measured: it tells the kinds of readings apart. (enum property replaced by openapi-typescript)
             * @enum {string}
             */
            method: "apex_locator";
            /**
             * read
             * @description What was read, in millimetres.
             */
            read_mm: number;
            /**
             * reference point
             * @description Where on the crown lengths are measured from; empty: not chosen.
             */
            reference_point: string;
            /**
             * read again
             * @description What was read again, in millimetres.
             */
            repeat_mm: number;
            /**
             * display held still
             * @description The display held still, in a moist and not flooded canal clear of metal.
             */
            stable: boolean;
        };
        /** @description An electronic reading, taken twice. */
        ApexLocatorKept: {
            /**
             * after coronal flaring
             * @description It was taken after coronal flaring.
             */
            after_flaring: boolean;
            /**
             * at the mark
             * @description The mark that was read at.
             */
            mark: components["schemas"]["LocatorMark"];
            /**
             * @description How it was measured: it tells the kinds of readings apart. (enum property replaced by openapi-typescript)
             * @enum {string}
             */
            method: "apex_locator";
            /**
             * read
             * @description What was read, in millimetres.
             */
            read_mm: number;
            /**
             * reference point
             * @description Where on the crown lengths are measured from; empty: not chosen.
             */
            reference_point: string;
            /**
             * read again
             * @description What was read again, in millimetres.
             */
            repeat_mm: number;
            /**
             * display held still
             * @description The display held still, in a moist and not flooded canal clear of metal.
             */
            stable: boolean;
        };
        /** @description An electronic reading, taken twice. */
        ApexLocatorRequest: {
            /**
             * after coronal flaring
             * @description It was taken after coronal flaring.
             * @default false
             */
            after_flaring?: boolean;
            /**
             * at the mark
             * @description The mark that was read at.
             */
            mark: components["schemas"]["LocatorMark"];
            /**
             * @description How it was measured: it tells the kinds of readings apart. (enum property replaced by openapi-typescript)
             * @enum {string}
             */
            method: "apex_locator";
            /**
             * read
             * @description What was read, in millimetres.
             */
            read_mm: number;
            /**
             * reference point
             * @description Where on the crown lengths are measured from; empty: not chosen.
             */
            reference_point: string;
            /**
             * read again
             * @description What was read again, in millimetres.
             */
            repeat_mm: number;
            /**
             * display held still
             * @description The display held still, in a moist and not flooded canal clear of metal.
             * @default true
             */
            stable?: boolean;
        };
        /** @description An electronic reading, taken twice. */
        ApexLocatorRequestKept: {
            /**
             * after coronal flaring
             * @description It was taken after coronal flaring.
             * @default false
             */
            after_flaring?: boolean;
            /**
             * at the mark
             * @description The mark that was read at.
             */
            mark: components["schemas"]["LocatorMark"];
            /**
             * @description How it was measured: it tells the kinds of readings apart. (enum property replaced by openapi-typescript)
             * @enum {string}
             */
            method: "apex_locator";
            /**
             * read
             * @description What was read, in millimetres.
             */
            read_mm: number;
            /**
             * reference point
             * @description Where on the crown lengths are measured from; empty: not chosen.
             */
            reference_point: string;
            /**
             * read again
             * @description What was read again, in millimetres.
             */
            repeat_mm: number;
            /**
             * display held still
             * @description The display held still, in a moist and not flooded canal clear of metal.
             * @default true
             */
            stable?: boolean;
        };
        /** @description The curve as part of a circle, by one of three constructions. */
        Arc: {
            /** @description Between the tangents at both ends. */
            angle_deg: number;
            /**
             * @description Three points on the curve; the tangents along both straight parts; or the whole curve taken as one arc that
             *     begins along the axis.
             */
            by: components["schemas"]["ArcConstruction"];
            /** @description Along the arc. */
            length_mm: number;
            /** @description Radius, in millimetres. */
            radius_mm: number;
            /** @description What the canal loses in length if this arc becomes its chord: a part of what flaring takes, never a bound. */
            straightened_mm: number;
        };
        /**
         * @description How the arc was drawn through the points.
         * @enum {string}
         */
        ArcConstruction: "three_points" | "tangents" | "one_arc";
        /** @description A question that the walker answers from what was recorded. */
        Ask: {
            /** @description To which step each way of leaving it leads. */
            exits: {
                [key: string]: string;
            };
            /** @description Its own id. */
            id: string;
            /**
             * @description Which kind it is: it tells the members of a choice apart. (enum property replaced by openapi-typescript)
             * @enum {string}
             */
            kind: "ask";
            /** @description The phase of the technique, by its key. */
            phase: string;
            /** @description What is asked. */
            question: components["schemas"]["Gained"] | components["schemas"]["AtLength"] | components["schemas"]["PassesBelow"];
        };
        /**
         * @description How often a supervisor and an image were asked for, and how often the plan in force expects it: None where it was
         *     not counted.
         */
        AskCounts: {
            /** @description Images, also on film or kept elsewhere; one that shows several canals counts once. */
            exposures: number;
            /** @description Images that were planned. */
            planned_exposures: number | null;
            /** @description Sign-offs that were planned. */
            planned_sign_offs: number | null;
            /** @description Decisions on plans, and sign-offs at hold points; those given for several canals at once count once. */
            sign_offs: number;
        };
        /** @description How often the expected work asks for a supervisor's sign-off, and for an image. */
        AskedFor: {
            /** @description Images that are taken, each with the canals it shows. */
            exposures: number;
            /** @description Includes the sign-off on the plan itself. */
            sign_offs: number;
            /** @description Points to which canals come together. */
            stages: components["schemas"]["Stage"][];
        };
        /** @description What a plan is asked for with: means and choices. Whether the programme has them is looked up afterwards. */
        AskedGivenRequest: {
            /** @description What the person who plans chose. */
            choices: components["schemas"]["ChoicesRequest"];
            /**
             * Format: uuid
             * @description Id of the kit.
             */
            kit_id: string;
            /** @description Key of a technique of the programme's list. */
            technique: string;
        };
        /** @description The student asks for a supervisor's sign-off. */
        AskPayload: {
            /**
             * @description Which kind it is: it tells the members of a choice apart. (enum property replaced by openapi-typescript)
             * @enum {string}
             */
            kind: "ask";
            /** @description A remark, or empty. */
            note: string;
            /** @description Id shared by what the student asked for several canals at once. */
            together: string;
        };
        /** @description The student asks for a supervisor's sign-off. */
        AskPayloadRequest: {
            /**
             * @description Which kind it is: it tells the members of a choice apart. (enum property replaced by openapi-typescript)
             * @enum {string}
             */
            kind: "ask";
            /**
             * @description A remark, or empty.
             * @default
             */
            note?: string;
            /**
             * @description Id shared by what the student asked for several canals at once.
             * @default
             */
            together?: string;
        };
        /**
         * @description Why a plan is asked for.
         *     * `first`: No supervisor has decided on this case yet.
         *     * `after_approval`: An approved plan was changed: the approval no longer counts.
         * @enum {string}
         */
        Asks: "first" | "after_return" | "after_approval";
        /** @description Each of these steps reached its stop when it was last worked. */
        AtLength: {
            /** @description Steps, by their ids. */
            nodes: string[];
            /**
             * @description Which test it is: it tells the members of a choice apart. (enum property replaced by openapi-typescript)
             * @enum {string}
             */
            test: "at_length";
        };
        /** @description Advice and contact times. Every plan carries them, so that they are on the phone before anything happens. */
        AtTheChair: {
            /** @description Advice for the work at the chair. */
            advice: components["schemas"]["Advice"][];
            /** @description How long each irrigant stays. */
            contacts: components["schemas"]["Contact"][];
        };
        /** @description The bands as they are kept, in JSON already; what lists learn from them is not shown. */
        BandsShown: {
            /** @description Canals that are worked; without those whose widths nobody knows. */
            canals: components["schemas"]["CanalBands"][];
            /** @description Of the plan that is worked; null before one was. */
            plan_hash: string | null;
            /** @description Of the last event that they know. */
            position: number;
        };
        /** @description What a device has to tell of one case, in its order. */
        BatchGivenRequest: {
            /**
             * Format: uuid
             * @description Who did it, as the device knows; nothing is stored where somebody else is signed in.
             */
            actor_id?: string;
            /**
             * Format: uuid
             * @description The last event that the device has seen here: the answer then holds later ones alone.
             */
            after_id?: string;
            /**
             * Format: uuid
             * @description Made once by the device and kept.
             */
            device_id: string;
            /** @description What happened, in order. */
            events: components["schemas"]["EventGivenRequest"][];
        };
        /**
         * @description What a difference bears on, the most dangerous first. The order is a judgement, no source.
         *     * `depth`: How deep an instrument or a needle goes.
         *     * `safety`: What may be done, with what fluid, and what keeps the patient safe.
         *     * `shape`: What the canal is like and how wide it becomes.
         *     * `means`: What the work is done with, and in what order.
         *     * `progress`: How far the work has come.
         * @enum {string}
         */
        Bears: "depth" | "safety" | "shape" | "means" | "progress";
        /** @description Two marked images of one canal, the tube turned in between. */
        BendInSpaceGivenRequest: {
            /**
             * Format: double
             * @description How far the tube turned about the tooth's long axis between the two.
             */
            apart_deg: number;
            /**
             * Format: uuid
             * @description A marking in which the canal's bend is marked.
             */
            first_id: string;
            /** @description In the second view it bends to the other side than in the first. */
            other_side: boolean;
            /**
             * Format: uuid
             * @description Another one, on another image.
             */
            second_id: string;
        };
        /** @description A stored bend in space; `outdated` follows from what was marked since. */
        BendInSpaceShown: {
            /**
             * Format: double
             * @description How far the tube turned about the tooth's long axis between the two images, in degrees.
             */
            apart_deg: number;
            /**
             * Format: date-time
             * @description When it was.
             */
            at: string;
            /**
             * Format: uuid
             * @description Id of the marking on the first image.
             */
            first_id: string;
            /**
             * Format: uuid
             * @description Id of the first image.
             */
            first_image_id: string;
            /**
             * Format: uuid
             * @description Its own id.
             */
            id: string;
            /** @description Schneider's angle in space. */
            in_space: components["schemas"]["Between"];
            /** @description Who made it. */
            made_by: components["schemas"]["PersonRef"];
            /** @description Counts from 1. */
            number: number;
            /** @description In the second image it bends to the other side. */
            other_side: boolean;
            /** @description The canal was marked anew on one of the two images since, or one of them counts no more. */
            outdated: boolean;
            /**
             * Format: uuid
             * @description Id of the marking on the second image.
             */
            second_id: string;
            /**
             * Format: uuid
             * @description Id of the second image.
             */
            second_image_id: string;
        };
        /**
         * @description * `one`: To one side.
         *     * `double`: To one side and then to the other.
         *     * `unclear`: To both sides, or it may be: the marks do not tell one bend from the other.
         * @enum {string}
         */
        BendShape: "one" | "double" | "unclear";
        /** @description A canal's bends in space, the last first. */
        BendsInSpaceShown: {
            /** @description Address of the next page; null: this is the last. */
            readonly next: string | null;
            /** @description Address of the page before; null: this is the first. */
            readonly previous: string | null;
            /** @description The rows of this page. */
            results: components["schemas"]["BendInSpaceShown"][];
        };
        /** @description Schneider's angle of one bend in two views. */
        BendsRequest: {
            /** @description How far the tube turned about the tooth's long axis between the views. */
            apart_deg: number;
            /** @description Angle in the first view, in degrees. */
            first_deg: number;
            /**
             * @description The angle with its interval as it was measured, without its sign; None: not known. Then the angle in space has no
             *     interval either.
             * @default null
             */
            first_within?: components["schemas"]["BetweenRequest"] | null;
            /** @description Below 0 where it bends to the other side than in the first view. */
            second_deg: number;
            /**
             * @description The second angle with its interval; null: not known.
             * @default null
             */
            second_within?: components["schemas"]["BetweenRequest"] | null;
        };
        /** @description A measure with the ends of its interval; the share that an interval holds is a figure. */
        Between: {
            /** @description Lower end of its interval. */
            least: number;
            /** @description None: no upper end, the radius of what may be straight. */
            most: number | null;
            /** @description The measure. */
            value: number;
        };
        /** @description A measure with the ends of its interval; the share that an interval holds is a figure. */
        BetweenRequest: {
            /** @description Lower end of its interval. */
            least: number;
            /** @description None: no upper end, the radius of what may be straight. */
            most: number | null;
            /** @description The measure. */
            value: number;
        };
        /**
         * @description Whether words may be part of the picture itself: DICOM Burned In Annotation (0028,0301).
         *     * `unknown`: The file does not say: a person has to look.
         * @enum {string}
         */
        BurntInText: "stated" | "denied" | "unknown";
        /** @description How a number follows from others, as it can be written on one line. */
        Calculation: {
            /** @description What the formula comes to, to a millionth, before it is rounded. */
            exact: number;
            /** @description Names of its inputs in braces, numbers, `+ - * /`, brackets, `min` and `max`. */
            formula: string;
            /** @description Every number that the formula names. */
            inputs: components["schemas"]["RationaleInput"][];
            /** @description The number as the plan has it. */
            result: number;
            /** @description Down to half a millimetre as a stop is set, to the nearest hundredth, down to one, or not at all. */
            rounding: components["schemas"]["Rounding"];
            /** @description Of the number: millimetres, millilitres, per cent; `size` for an ISO size, empty for a count. */
            unit: string;
        };
        /**
         * @description What the image file says that its pixel spacing was corrected by.
         * @enum {string}
         */
        Calibration: "fiducial" | "geometry";
        /**
         * @description DICOM's Pixel Spacing Calibration Type (0028,0A02).
         * @enum {string}
         */
        CalibrationType: "GEOMETRY" | "FIDUCIAL" | "other";
        /** @description What is expected of one canal from where its work stands. */
        CanalBands: {
            /** @description The canal by its name; empty or null for the whole tooth. */
            canal: string;
            /** @description How many of the expectation's steps have been done; the others are still to come. */
            done: number;
            /** @description What is expected of the canal. */
            expectation: components["schemas"]["Expectation"];
            /** @description The last recorded depth that was expected in a band. */
            last: components["schemas"]["Judged"] | null;
        };
        /** @description What is charted of a canal. As a body: what changes of it; what is left out stays. */
        CanalChanges: {
            /** @description Not in the earlier version. */
            came: boolean;
            /** @description The canal by its name; empty or null for the whole tooth. */
            canal: string;
            /** @description Cautions that the later one has and the earlier one has not. */
            cautions_came: components["schemas"]["Caution"][];
            /** @description Cautions that the earlier one had and the later one has not. */
            cautions_went: components["schemas"]["Caution"][];
            /** @description What differs. */
            changes: components["schemas"]["Change"][];
            /** @description Not in the later version. */
            went: boolean;
        };
        /** @description What was chosen for one canal. */
        CanalChoice: {
            /**
             * canal
             * @description The canal by its name; empty or null for the whole tooth.
             */
            canal: string;
            /**
             * final size chosen
             * @description ISO size at the canal's end; None: the proposed one.
             */
            final_size: number | null;
            /**
             * reason for the size
             * @description Why it lies outside the advised range.
             */
            reason: string;
        };
        /** @description What was chosen for one canal. */
        CanalChoiceRequest: {
            /**
             * canal
             * @description The canal by its name; empty or null for the whole tooth.
             */
            canal: string;
            /**
             * final size chosen
             * @description ISO size at the canal's end; None: the proposed one.
             * @default null
             */
            final_size?: number | null;
            /**
             * reason for the size
             * @description Why it lies outside the advised range.
             * @default
             */
            reason?: string;
        };
        /** @description Where the work on one canal stands. */
        CanalCourseShown: {
            /** @description The event whose question is open. */
            asked_by: string | null;
            /** @description The event by which the student asked for a sign-off. */
            asking: string | null;
            /** @description The canal by its name; empty or null for the whole tooth. */
            canal: string;
            /** @description The event by which a supervisor said that they come. */
            coming: string | null;
            /** @description What the hold point is about and is not there; a supervisor may approve it all the same. */
            lacking: components["schemas"]["Lacking"][];
            /** @description The present step. */
            node: string;
            /** @description How it is. */
            state: components["schemas"]["CanalState"];
            /** @description The stop, in whole micrometres from the reference point; null: none. */
            stop_um: number | null;
        };
        /** @description A canal that was found or is expected. */
        CanalGiven: {
            /** @description The canal by its name; empty or null for the whole tooth. */
            canal: string;
            /** @description What differs. */
            changes: components["schemas"]["Change"][];
        };
        /** @description A canal that was found or is expected. */
        CanalGivenRequest: {
            /** @description Width of the apical opening where it was seen to be wide. */
            apex_mm?: number | null;
            /** @description Schneider's angle, in degrees; null: not measured. */
            curvature_deg?: number | null;
            /** @description From the canal's end to the middle of its curve. */
            curve_from_end_mm?: number | null;
            /** @description Radius of the curve, in millimetres; null: not measured. */
            curve_radius_mm?: number | null;
            /** @description From the reference point to where the first curve begins. */
            curve_start_mm?: number | null;
            /** @description Whether the canal was found. */
            finding?: components["schemas"]["Finding"];
            /** @description First hand size that bound at the end when it was gauged after coronal flaring. */
            first_binder_size?: number | null;
            /**
             * Format: uuid
             * @description Made by the sender, so that sending again is harmless.
             */
            id?: string;
            /** @description Its name, for people. */
            name: string;
            /** @description From the reference point to the orifice. */
            orifice_mm?: number | null;
            /** @description Where on the crown lengths are measured from; empty: not chosen. */
            reference_point: string;
            /** @description What the image shows of resorption at the root's end. */
            resorption?: components["schemas"]["Resorption"];
            /** @description The root, by its name. */
            root: string;
            /** @description The thinnest wall, measured on this tooth. */
            wall?: components["schemas"]["WallInputRequest"] | null;
            /** @description Measured widths, used in place of the published ones; from the end upwards. */
            widths?: components["schemas"]["WidthInputRequest"][];
        };
        /** @description One canal as it was charted and read, and how far its work has come. */
        CanalInput: {
            /**
             * width of a wide apex
             * @description Width of the apical opening where it was seen to be wide.
             */
            apex_mm: number | null;
            /**
             * bends to both sides
             * @description As marked images have it; None where none was marked, or it bends to one side.
             */
            bend_shape: components["schemas"]["BendShape"] | null;
            /**
             * curvature
             * @description Schneider's angle, in degrees; null: not measured.
             */
            curvature_deg: number | null;
            /**
             * from the end to the middle of the curve
             * @description From the canal's end to the middle of its curve.
             */
            curve_from_end_mm: number | null;
            /**
             * radius of the curve
             * @description Radius of the curve, in millimetres; null: not measured.
             */
            curve_radius_mm: number | null;
            /**
             * depth at which the curve begins
             * @description From the reference point to where the first curve begins.
             */
            curve_start_mm: number | null;
            /**
             * depth felt
             * @description Depths that were recorded.
             */
            felt: components["schemas"]["RecordedDepth"][];
            /**
             * orifice
             * @description A canal that is sent to be planned counts as found, unless the request says otherwise.
             */
            finding: components["schemas"]["Finding"];
            /**
             * first hand size to bind after coronal flaring
             * @description First hand size that bound at the end when it was gauged after coronal flaring.
             */
            first_binder_size: number | null;
            /**
             * where it joins
             * @description Where the canal meets the main one; null: not measured.
             */
            junction: components["schemas"]["Junction"] | null;
            /**
             * canal
             * @description Its name, for people.
             */
            name: string;
            /**
             * depth of the orifice
             * @description From the reference point to the orifice.
             */
            orifice_mm: number | null;
            /**
             * work so far
             * @description How far its work had come when this plan was made; none before anything was done.
             */
            progress: components["schemas"]["Progress"] | null;
            /**
             * reading
             * @description The readings.
             */
            readings: (components["schemas"]["PreOperativeImage"] | components["schemas"]["Ratio"] | components["schemas"]["ConfirmingImage"] | components["schemas"]["ApexLocator"] | components["schemas"]["DirectSight"])[];
            /**
             * reference point
             * @description Where on the crown lengths are measured from; empty: not chosen.
             */
            reference_point: string;
            /**
             * resorption at the root's end
             * @description What the image shows of resorption at the root's end.
             */
            resorption: components["schemas"]["Resorption"];
            /**
             * root
             * @description The root, by its name.
             */
            root: string;
            /**
             * thinnest wall
             * @description The thinnest wall, measured on this tooth.
             */
            wall: components["schemas"]["WallInput"] | null;
            /**
             * width measured
             * @description Measured widths, used in place of the published ones; from the end upwards.
             */
            widths: components["schemas"]["WidthInput"][];
        };
        /** @description One canal as it was charted and read, and how far its work has come. */
        CanalInputRequest: {
            /**
             * width of a wide apex
             * @description Width of the apical opening where it was seen to be wide.
             * @default null
             */
            apex_mm?: number | null;
            /**
             * bends to both sides
             * @description As marked images have it; None where none was marked, or it bends to one side.
             * @default null
             */
            bend_shape?: components["schemas"]["BendShape"] | null;
            /**
             * curvature
             * @description Schneider's angle, in degrees; null: not measured.
             * @default null
             */
            curvature_deg?: number | null;
            /**
             * from the end to the middle of the curve
             * @description From the canal's end to the middle of its curve.
             * @default null
             */
            curve_from_end_mm?: number | null;
            /**
             * radius of the curve
             * @description Radius of the curve, in millimetres; null: not measured.
             * @default null
             */
            curve_radius_mm?: number | null;
            /**
             * depth at which the curve begins
             * @description From the reference point to where the first curve begins.
             * @default null
             */
            curve_start_mm?: number | null;
            /**
             * depth felt
             * @description Depths that were recorded.
             * @default []
             */
            felt?: components["schemas"]["RecordedDepthRequest"][];
            /**
             * orifice
             * @description A canal that is sent to be planned counts as found, unless the request says otherwise.
             * @default found
             */
            finding?: components["schemas"]["Finding"];
            /**
             * first hand size to bind after coronal flaring
             * @description First hand size that bound at the end when it was gauged after coronal flaring.
             * @default null
             */
            first_binder_size?: number | null;
            /**
             * where it joins
             * @description Where the canal meets the main one; null: not measured.
             * @default null
             */
            junction?: components["schemas"]["JunctionRequest"] | null;
            /**
             * canal
             * @description Its name, for people.
             */
            name: string;
            /**
             * depth of the orifice
             * @description From the reference point to the orifice.
             * @default null
             */
            orifice_mm?: number | null;
            /**
             * work so far
             * @description How far its work had come when this plan was made; none before anything was done.
             * @default null
             */
            progress?: components["schemas"]["ProgressRequest"] | null;
            /**
             * reading
             * @description The readings.
             * @default []
             */
            readings?: (components["schemas"]["PreOperativeImageRequest"] | components["schemas"]["RatioRequest"] | components["schemas"]["ConfirmingImageRequest"] | components["schemas"]["ApexLocatorRequest"] | components["schemas"]["DirectSightRequest"])[];
            /**
             * reference point
             * @description Where on the crown lengths are measured from; empty: not chosen.
             */
            reference_point: string;
            /**
             * resorption at the root's end
             * @description What the image shows of resorption at the root's end.
             * @default none
             */
            resorption?: components["schemas"]["Resorption"];
            /**
             * root
             * @description The root, by its name.
             */
            root: string;
            /**
             * thinnest wall
             * @description The thinnest wall, measured on this tooth.
             * @default null
             */
            wall?: components["schemas"]["WallInputRequest"] | null;
            /**
             * width measured
             * @description Measured widths, used in place of the published ones; from the end upwards.
             * @default []
             */
            widths?: components["schemas"]["WidthInputRequest"][];
        };
        /** @description Marks along one canal on the image, the reference point first, the root's end last. */
        CanalLine: {
            /** @description It was taken after coronal flaring. */
            after_flaring: boolean;
            /** @description The canal by its name; empty or null for the whole tooth. */
            canal: string;
            /** @description Which point is where the canal leaves the axis of its coronal part. */
            leaves: number | null;
            /** @description Which point is the orifice: above it the line is straight, as an instrument is. */
            orifice: number | null;
            /** @description Distances from the reference point whose places on the image are wanted: stops, a junction. */
            places_mm: number[];
            /** @description The points, in order. */
            points: components["schemas"]["Pixel"][];
            /** @description Where on the crown lengths are measured from; empty: not chosen. */
            reference_point: string;
            /** @description The stop that was set on that instrument. */
            set_mm: number | null;
            /** @description Which point is where the bend ends and a straight part runs on to the end. */
            straight_again: number | null;
            /** @description Tip of an instrument that stands in the canal. */
            tip: components["schemas"]["Pixel"] | null;
        };
        /** @description Marks along one canal on the image, the reference point first, the root's end last. */
        CanalLineRequest: {
            /**
             * @description It was taken after coronal flaring.
             * @default false
             */
            after_flaring?: boolean;
            /** @description The canal by its name; empty or null for the whole tooth. */
            canal: string;
            /**
             * @description Which point is where the canal leaves the axis of its coronal part.
             * @default null
             */
            leaves?: number | null;
            /**
             * @description Which point is the orifice: above it the line is straight, as an instrument is.
             * @default null
             */
            orifice?: number | null;
            /**
             * @description Distances from the reference point whose places on the image are wanted: stops, a junction.
             * @default []
             */
            places_mm?: number[];
            /** @description The points, in order. */
            points: components["schemas"]["PixelRequest"][];
            /**
             * @description Where on the crown lengths are measured from; empty: not chosen.
             * @default
             */
            reference_point?: string;
            /**
             * @description The stop that was set on that instrument.
             * @default null
             */
            set_mm?: number | null;
            /**
             * @description Which point is where the bend ends and a straight part runs on to the end.
             * @default null
             */
            straight_again?: number | null;
            /**
             * @description Tip of an instrument that stands in the canal.
             * @default null
             */
            tip?: components["schemas"]["PixelRequest"] | null;
        };
        /** @description The canals of a case. */
        CanalList: {
            /** @description Address of the next page; null: this is the last. */
            readonly next: string | null;
            /** @description Address of the page before; null: this is the first. */
            readonly previous: string | null;
            /** @description The rows of this page. */
            results: components["schemas"]["CanalShown"][];
        };
        /** @description A canal that a new case starts from, or that it tells the user to look for. */
        CanalOnOffer: {
            /** @description Which kind it is: it tells the members of a choice apart. */
            kind: components["schemas"]["LookForKind"];
            /** @description How it is known. */
            know: string;
            /** @description Its name, for people. */
            name: string;
            /** @description Other points to measure from. */
            other_reference_points: string[];
            /** @description Where lengths are measured from by default; none must be chosen by a person. */
            reference_point: string | null;
            /** @description The root, by its name. */
            root: string;
            /** @description Where it is from. */
            source: string;
            /** @description How many studies it is from. */
            studies: components["schemas"]["Prevalence"][];
        };
        /** @description The plan of one canal. */
        CanalPlan: {
            /** @description The canal by its name; empty or null for the whole tooth. */
            canal: string;
            /** @description Deepest stop of a shaping instrument: the working length, or the junction for a joining canal. */
            end_mm: number | null;
            /** @description The contact-depth estimate; none before there is a length, or where no widths are known. */
            expectation: components["schemas"]["Expectation"] | null;
            /** @description Node ids in the order expected, loops walked as often as the estimate or else the technique expects. */
            expected_path: string[];
            /** @description None for a wide canal while nobody has chosen one. */
            final_size: number | null;
            /** @description Taper of the final instrument, in hundredths. */
            final_taper: number;
            /** @description Totals over the expected path. */
            irrigants: components["schemas"]["IrrigantTotal"][];
            /** @description The main canal it joins. */
            joins: string | null;
            /** @description Where this canal joins, from the reference point, before rounding. */
            junction_mm: number | null;
            /** @description The length, and what it rests on. */
            length: components["schemas"]["Length"];
            /** @description The irrigation needle. */
            needle: components["schemas"]["NeedleDepth"] | null;
            /** @description How the canal is filled; null: not planned. */
            obturation: components["schemas"]["Obturation"] | null;
            /** @description The shape once everything in the order of work has stood at its stop, reference point side first. */
            outline: components["schemas"]["ProfilePoint"][];
            /** @description The stops rest on an estimate and will be computed again. */
            provisional: boolean;
            /** @description The rule, inputs and rows behind each number. */
            rationales: components["schemas"]["Rationale"][];
            /** @description Where on the crown lengths are measured from; empty: not chosen. */
            reference_point: string;
            /** @description The root, by its name. */
            root: string;
            /** @description The order of work, as a graph of steps. */
            run_sheet: components["schemas"]["RunSheet"];
            /** @description Which final sizes can be chosen, and which is advised; null: none can be told. */
            size_range: components["schemas"]["SizeRange"];
            /** @description How much the bend strains the final instrument; null: not known. */
            strain: components["schemas"]["Strain"][];
            /** @description The thinnest wall that is left; null: not known. */
            wall: components["schemas"]["WallLeft"] | null;
            /** @description What is not in the order of work yet, and why; null: nothing. */
            withheld: components["schemas"]["Withheld"][];
        };
        /** @description What is stored of a canal's plan for lists: micrometres there, millimetres here. */
        CanalPlanListed: {
            /** @description The canal by its name; empty or null for the whole tooth. */
            canal: string;
            /**
             * Format: double
             * @description Deepest stop of a shaping instrument, in millimetres from the reference point; null: not known.
             */
            end_mm: number | null;
            /** @description Null: a wide canal, no size chosen yet. */
            final_size: number | null;
            /** @description Taper of the final instrument, in hundredths. */
            final_taper: number;
            /** @description What the length is worth. */
            length_state: components["schemas"]["LengthState"];
            /**
             * Format: double
             * @description The stop, in millimetres from the reference point; null: not known.
             */
            stop_mm: number | null;
        };
        /** @description One canal: what its length rests on, what was planned, what was done. */
        CanalRecord: {
            /** @description The canal by its name; empty or null for the whole tooth. */
            canal: string;
            /** @description What was seen and measured of it beside its length, or empty. */
            charted: string;
            /** @description How end and size differ from the plan, a few words each; while it is worked, how far it is. */
            differs: string[];
            /** @description By the depths recorded; None before the first. */
            done: components["schemas"]["CanalShape"] | null;
            /** @description Where it ends: as done once it is finished or was worked deeper than planned, before that as planned. */
            end_mm: number | null;
            /** @description The canal that it joins at its end. */
            joins: string | null;
            /** @description The largest shaping instrument that stood at the canal's end. */
            largest_at_length: string | null;
            /** @description The length, and what it rests on. */
            length: components["schemas"]["Length"] | null;
            /** @description Why no length can be worked out from the readings, or empty. */
            length_problem: string;
            /** @description By the plan that stands; None where none has the canal. */
            planned: components["schemas"]["CanalShape"] | null;
            /** @description Final size and taper of the plan that stands. */
            planned_size: string | null;
            /** @description Where on the crown lengths are measured from; empty: not chosen. */
            reference_point: string;
            /** @description The root, by its name. */
            root: string;
            /** @description Where it stands; none before the work began or where no plan has it. */
            state: components["schemas"]["CanalState"] | null;
            /** @description The steps, in order. */
            steps: components["schemas"]["StepRecord"][];
        };
        /** @description A canal as it is drawn: planned, or done. */
        CanalShape: {
            /** @description Where it ends, from the reference point. */
            end_mm: number | null;
            /** @description Reference point side first. */
            outline: components["schemas"]["ProfilePoint"][];
            /** @description Size and taper of the largest instrument at that end. */
            size: string | null;
        };
        /** @description A stored canal with all that is charted and measured of it. */
        CanalShown: {
            /** @description Width of the apical opening where it was seen to be wide. */
            apex_mm: number | null;
            /** @description Schneider's angle, in degrees; null: not measured. */
            curvature_deg: number | null;
            /** @description From the canal's end to the middle of its curve. */
            curve_from_end_mm: number | null;
            /** @description Radius of the curve, in millimetres; null: not measured. */
            curve_radius_mm: number | null;
            /** @description From the reference point to where the first curve begins. */
            curve_start_mm: number | null;
            /** @description Whether the canal was found. */
            finding: components["schemas"]["Finding"];
            /** @description First hand size that bound at the end when it was gauged after coronal flaring. */
            first_binder_size: number | null;
            /**
             * Format: uuid
             * @description Its own id.
             */
            id: string;
            /** @description The last one measured. */
            junction: components["schemas"]["Junction"] | null;
            /** @description Junctions that were measured, those struck too. */
            junctions: components["schemas"]["JunctionShown"][];
            /** @description What the readings come to. */
            length: components["schemas"]["Length"] | null;
            /** @description Why no length can be worked out, or empty. */
            length_problem: string;
            /** @description Its name, for people. */
            name: string;
            /** @description From the reference point to the orifice. */
            orifice_mm: number | null;
            /** @description The readings. */
            readings: components["schemas"]["ReadingShown"][];
            /** @description Empty until one was chosen. */
            reference_point: string;
            /** @description What the image shows of resorption at the root's end. */
            resorption: components["schemas"]["Resorption"];
            /** @description The root, by its name. */
            root: string;
            /** @description The thinnest wall, measured on this tooth. */
            wall: components["schemas"]["WallInput"] | null;
            /** @description Measured widths, used in place of the published ones; from the end upwards. */
            widths: components["schemas"]["WidthInput"][];
        };
        /** @description What is said of one canal at the hold point where it waits. */
        CanalSignOffRequest: {
            /** @description The canal by its name; empty or null for the whole tooth. */
            canal: string;
            /**
             * @description Approved although what is asked for is not there.
             * @default false
             */
            despite_missing?: boolean;
            /** @description How the step was left. */
            exit: components["schemas"]["SignOffExit"];
            /** @description The hold point in the run sheet. */
            node: string;
            /**
             * @description Why, of what is returned or let pass in spite.
             * @default
             */
            reason?: string;
        };
        /**
         * @description * `not_released`: A supervisor's decision on the plan leaves this canal out for now.
         *     * `hold_point`: Waits for a supervisor's sign-off.
         *     * `past_stop`: An instrument went past its stop, and nobody has said why yet.
         *     * `to_plan`: Waits for a new version: a length was taken, something came late, or the plan no longer fits.
         *     * `to_check`: Not found as it was left at the last visit: nothing engine-driven enters it.
         *     * `waits`: Its next step waits until a canal that it joins has come far enough.
         * @enum {string}
         */
        CanalState: "open" | "not_released" | "hold_point" | "paused" | "past_stop" | "to_plan" | "to_check" | "waits" | "finished";
        /** @description Where the work in one canal stands. */
        CanalSummary: {
            /** @description The student asked for a supervisor's sign-off. */
            asked: boolean;
            /** @description The canal by its name; empty or null for the whole tooth. */
            canal: string;
            /** @description A supervisor comes to the chair. */
            coming: boolean;
            /** @description What it waits for, or empty. */
            hold_point: string;
            /** @description What is asked. */
            note: string;
            /** @description The canal's last depth, where it is shorter or deeper than expected. */
            out_of_band: components["schemas"]["OutOfBand"] | null;
            /** @description How it is. */
            state: components["schemas"]["CanalState"];
            /** @description Id shared by the canals that the student asked for at once. */
            together: string;
        };
        /** @description How much of an irrigant one canal got. */
        CanalVolume: {
            /** @description Empty where the entry named none. */
            canal: string;
            /** @description Volume in millilitres; null: not told. */
            volume_ml: number;
        };
        /** @description The canal before anything has been in it, at one depth. */
        CanalWidth: {
            /** @description Millimetres from the reference point. */
            from_reference_mm: number;
            /** @description The narrow diameter: it is what binds an instrument. */
            narrow_mm: number;
            /** @description The diameter across the narrow one: a round instrument leaves a part of it untouched. */
            wide_mm: number;
        };
        /** @description A case to be opened. */
        CaseGivenRequest: {
            /** @description Somebody looked: what was refused as `alias-looks-like-a-name` is none. */
            alias_is_no_name?: boolean;
            /** @description Names on offer for the tooth; the usual ones where left out. */
            canals?: string[] | null;
            /**
             * Format: uuid
             * @description Made by the sender, so that sending again is harmless.
             */
            id?: string;
            /** @description An alias. A real identity has no place here. */
            patient_alias: string;
            /** @description Training block, extracted tooth or clinic. */
            setting: components["schemas"]["Setting"];
            /**
             * Format: uuid
             * @description Whose case it is: for a service, which must say; else it is your own.
             */
            student_id?: string;
            /**
             * Format: uuid
             * @description Who supervises; null: nobody yet.
             */
            supervisor_id?: string | null;
            /** @description The tooth. */
            tooth: components["schemas"]["ToothNameRequest"];
        };
        /** @description A stored case in a list, with its people and where its plan stands. */
        CaseListed: {
            /**
             * Format: date-time
             * @description When it was made.
             */
            created_at: string;
            /** @description For services: the key that yours knows it by; null for people, and where there is none. */
            external_id: string | null;
            /**
             * Format: uuid
             * @description Its own id.
             */
            id: string;
            /** @description The alias of the patient. Never a real identity. */
            patient_alias: string;
            /**
             * Format: uuid
             * @description Id of the programme.
             */
            programme_id: string;
            /** @description Counts the changes of the case; its ETag begins with it. */
            revision: number;
            /** @description Training block, extracted tooth or clinic. */
            setting: components["schemas"]["Setting"];
            /** @description Where it stands. */
            status: components["schemas"]["PlanStatus"];
            /** @description The student whose case it is. */
            student: components["schemas"]["PersonRef"];
            /** @description The supervisor; null: nobody yet. */
            supervisor: components["schemas"]["PersonRef"] | null;
            /** @description The tooth. */
            tooth: components["schemas"]["ToothNames"];
            /** @description The version that stands. */
            version: components["schemas"]["VersionRef"] | null;
        };
        /** @description One page of cases. */
        CasePage: {
            /**
             * Format: uri
             * @description Address of the next page; null: this is the last.
             */
            next: string | null;
            /**
             * Format: uri
             * @description Address of the page before; null: this is the first.
             */
            previous: string | null;
            /** @description The rows of this page. */
            results: components["schemas"]["CaseListed"][];
        };
        /** @description A stored case with its whole chart. */
        CaseShown: {
            /** @description Whether the tooth is as most of its kind are. */
            anatomy: components["schemas"]["Anatomy"];
            /** @description The canals, each once. */
            canals: components["schemas"]["CanalShown"][];
            /**
             * Format: date-time
             * @description When it was made.
             */
            created_at: string;
            /** @description The tooth, in that notation. */
            designation: string;
            /** @description For services: the key that yours knows it by; null for people, and where there is none. */
            external_id: string | null;
            /** @description All that a person recorded as difficult: codes of `difficulty-factors`, each a factor, a colon and a level. */
            factors: string[];
            /**
             * Format: uuid
             * @description Its own id.
             */
            id: string;
            /** @description Dam in place and tight: in the clinic nothing opens without it. */
            isolated: boolean;
            /** @description As the tooth was typed in. */
            notation: components["schemas"]["Notation"];
            /** @description What supervisors let pass, those taken back too. */
            overrides: components["schemas"]["OverrideShown"][];
            /** @description The alias of the patient. Never a real identity. */
            patient_alias: string;
            /** @description A perforation is suspected. */
            perforation: boolean;
            /**
             * Format: uuid
             * @description Id of the programme.
             */
            programme_id: string;
            /** @description Counts the changes of the case; its ETag begins with it. */
            revision: number;
            /** @description The tooth has a root filling already. */
            root_filled: boolean;
            /** @description The roots. */
            roots: components["schemas"]["RootInput"][];
            /** @description Training block, extracted tooth or clinic. */
            setting: components["schemas"]["Setting"];
            /** @description Where it stands. */
            status: components["schemas"]["PlanStatus"];
            /** @description The student whose case it is. */
            student: components["schemas"]["PersonRef"];
            /** @description The supervisor; null: nobody yet. */
            supervisor: components["schemas"]["PersonRef"] | null;
            /** @description The tooth. */
            tooth: components["schemas"]["ToothNames"];
            /** @description The version that stands. */
            version: components["schemas"]["VersionRef"] | null;
        };
        /** @description Something to know before the work, with what to do about it. */
        Caution: {
            /** @description The canal by its name; empty or null for the whole tooth. */
            canal: string | null;
            /** @description Which one it is, in a word that stays the same. */
            code: string;
            /** @description What to do about it. */
            do: string;
            /** @description How its source is known; `from memory` marks a reference value that has to be checked. */
            know: string;
            /** @description What the value is compared with; null: nothing. */
            limit: number | null;
            /** @description A supervisor may let the work go on, with a reason. */
            may_override: boolean;
            /** @description The supervisor's reason, where one let the work go on. */
            overridden: string | null;
            /** @description The data row or rule it rests on. */
            row: string;
            /** @description It in one sentence, for people. */
            says: string;
            /** @description How much it weighs: note, caution or stop. */
            severity: components["schemas"]["Severity"];
            /** @description The step of the canal's run sheet it concerns, where it concerns one. */
            step: string | null;
            /** @description The unit. */
            unit: string | null;
            /** @description The value. */
            value: number | null;
        };
        /**
         * @description * `stands`: The plan that stands still has it, and nobody let it pass.
         *     * `overridden`: A supervisor let the work go on in spite of it, with a reason.
         *     * `gone`: A later version of the plan no longer has it.
         * @enum {string}
         */
        CautionEnd: "stands" | "overridden" | "gone";
        /** @description What a plan warned of, and how that ended. */
        CautionRecord: {
            /** @description The canal by its name; empty or null for the whole tooth. */
            canal: string | null;
            /** @description Which one it is, in a word that stays the same. */
            code: string;
            /** @description It in one sentence, for people. */
            says: string;
            /** @description It was settled. */
            settled: components["schemas"]["CautionEnd"];
            /** @description How much it weighs: note, caution or stop. */
            severity: components["schemas"]["Severity"];
            /** @description The last version that has it. */
            version: number;
        };
        /** @description One field that differs between two plans. */
        Change: {
            /** @description What it is afterwards; null: nothing. */
            after: string | null;
            /** @description What the difference bears on. */
            bears_on: components["schemas"]["Bears"];
            /** @description What it was before; null: nothing. */
            before: string | null;
            /** @description What it is called, for people. */
            label: string;
            /** @description Where in what the plan is made from, items by their keys; empty for what came out of it. */
            path: string;
            /** @description What of it, where there are several: an instrument and phase, one of the readings. */
            subject: string;
            /** @description Of `before` and `after`; empty where there is none. */
            unit: string;
            /** @description Which thing it is about. */
            what: components["schemas"]["ChangeKind"];
        };
        /**
         * @description * `length`: The working length before rounding, mm.
         *     * `end`: Deepest stop of a shaping instrument, mm.
         *     * `reason`: Why a size outside the advised range was chosen.
         *     * `stop`: The stop of one instrument, mm.
         *     * `given`: Anything else that went in: its path says what.
         * @enum {string}
         */
        ChangeKind: "setting" | "kit" | "technique" | "needle" | "irrigant" | "final_rinse" | "series_taper" | "isolated" | "thresholds" | "length" | "length_state" | "end" | "junction" | "final_size" | "reason" | "stop" | "needle_ceiling" | "finding" | "reference_point" | "withheld" | "given";
        /** @description A message about one change. It says what is to be read anew, and nothing of what is there. */
        ChangeMessage: {
            /** @description The change, as in the list of changes. */
            data: components["schemas"]["ChangeSent"];
            /**
             * Format: date-time
             * @description When the change was written.
             */
            timestamp: string;
            /** @description What has changed. */
            type: components["schemas"]["FeedKind"];
        };
        /** @description One page of what changed, in order. */
        ChangePage: {
            /** @description There are more: ask again at once. */
            more: boolean;
            /** @description Where to go on: ask with it as `after`. */
            next: string;
            /** @description Address of the page before; null: this is the first. */
            readonly previous: string | null;
            /** @description The rows of this page. */
            results: components["schemas"]["ChangeShown"][];
        };
        /** @description One change, as in the list of changes, and how to go on there. */
        ChangeSent: {
            /**
             * Format: uuid
             * @description Id of who did it.
             */
            actor_id: string;
            /** @description What shows the change: read it anew. 404: it is gone. */
            readonly address: string;
            /**
             * Format: date-time
             * @description When it was written. The order is the position's.
             */
            at: string;
            /** @description Ask for changes with it as `after` to get what comes after this one. */
            bookmark: string;
            /**
             * Format: uuid
             * @description Null for what is of no case.
             */
            case_id: string | null;
            /** @description What happened at the chair; null for all but an event. */
            event: components["schemas"]["EventKind"] | null;
            /** @description Which kind it is: it tells the members of a choice apart. */
            kind: components["schemas"]["FeedKind"];
            /** @description Counts the programme's changes from 1. */
            position: number;
            /** @description What stands before the hyphen in the present ETag at that address: a case's revision, a version's hash. Null where the ETag has no such part. The rest changes with all that is shown: only the address knows it, and answers 304 where you name the one you have. */
            state: string | null;
            /**
             * Format: uuid
             * @description Id of the case, canal, image, version, event or person, by its kind.
             */
            subject_id: string;
        };
        /** @description One change. It says what is to be read anew, and nothing of what is there. */
        ChangeShown: {
            /**
             * Format: uuid
             * @description Id of who did it.
             */
            actor_id: string;
            /** @description What shows the change: read it anew. 404: it is gone. */
            readonly address: string;
            /**
             * Format: date-time
             * @description When it was written. The order is the position's.
             */
            at: string;
            /**
             * Format: uuid
             * @description Null for what is of no case.
             */
            case_id: string | null;
            /** @description What happened at the chair; null for all but an event. */
            event: components["schemas"]["EventKind"] | null;
            /** @description Which kind it is: it tells the members of a choice apart. */
            kind: components["schemas"]["FeedKind"];
            /** @description Counts the programme's changes from 1. */
            position: number;
            /** @description What stands before the hyphen in the present ETag at that address: a case's revision, a version's hash. Null where the ETag has no such part. The rest changes with all that is shown: only the address knows it, and answers 304 where you name the one you have. */
            state: string | null;
            /**
             * Format: uuid
             * @description Id of the case, canal, image, version, event or person, by its kind.
             */
            subject_id: string;
        };
        /** @description A comparison, or none: an answer is always an object. */
        ChangesShown: {
            /** @description Null where there is no earlier version to compare with. */
            changes: components["schemas"]["PlanChanges"] | null;
        };
        /** @description What the person who plans chose. */
        Choices: {
            /**
             * choice for the canal
             * @description The canals, each once.
             */
            canals: components["schemas"]["CanalChoice"][];
            /**
             * final rinse
             * @description In order; empty means the working irrigant alone.
             */
            final_rinse: components["schemas"]["Irrigant"][];
            /**
             * glide path up to size
             * @description Last glide-path size; None: the technique's own.
             */
            glide_path_to_size: number | null;
            /**
             * irrigant
             * @description What the canal is rinsed with; null: nothing.
             */
            irrigant: components["schemas"]["Irrigant"];
            /**
             * needle
             * @description The irrigation needle.
             */
            needle: components["schemas"]["Needle"];
            /**
             * taper of the series
             * @description Taper of the shaping series where the kit has several.
             */
            series_taper: number | null;
        };
        /** @description What the person who plans chose. */
        ChoicesRequest: {
            /**
             * choice for the canal
             * @description The canals, each once.
             * @default []
             */
            canals?: components["schemas"]["CanalChoiceRequest"][];
            /**
             * final rinse
             * @description In order; empty means the working irrigant alone.
             * @default []
             */
            final_rinse?: components["schemas"]["Irrigant"][];
            /**
             * glide path up to size
             * @description Last glide-path size; None: the technique's own.
             * @default null
             */
            glide_path_to_size?: number | null;
            /**
             * irrigant
             * @description What the canal is rinsed with; null: nothing.
             * @default water
             */
            irrigant?: components["schemas"]["Irrigant"];
            /**
             * needle
             * @description The irrigation needle.
             */
            needle: components["schemas"]["NeedleRequest"];
            /**
             * taper of the series
             * @description Taper of the shaping series where the kit has several.
             * @default null
             */
            series_taper?: number | null;
        };
        /** @description A client to be registered. */
        ClientGivenRequest: {
            /** @description For whom the client asks: for the programme's service, or for people who allow it. */
            acts_for: components["schemas"]["ActsFor"];
            /** @description Whether the client keeps a secret. */
            client_type: components["schemas"]["ClientType"];
            /** @description Of the service; people who are asked to allow it read this. */
            name: string;
            /** @description Of the person who is signed in. */
            password: string;
            /** @description Where a person is sent back to, matched to the letter: https, or http to 127.0.0.1 or [::1] with any port (RFC 8252). Empty for a client that acts for itself. */
            redirect_uris?: string[];
            /** @description What the key opens. */
            scopes: components["schemas"]["Scope"][];
        };
        /** @description Clients, without their secrets. */
        ClientList: {
            /** @description Address of the next page; null: this is the last. */
            readonly next: string | null;
            /** @description Address of the page before; null: this is the first. */
            readonly previous: string | null;
            /** @description The rows of this page. */
            results: components["schemas"]["ClientShown"][];
        };
        /** @description A stored client; never its secret. */
        ClientShown: {
            /** @description For whom the client asks: for the programme's service, or for people who allow it. */
            acts_for: components["schemas"]["ActsFor"];
            /** @description Whether the client keeps a secret. */
            client_type: components["schemas"]["ClientType"];
            /**
             * Format: uuid
             * @description Its `client_id`.
             */
            id: string;
            /**
             * Format: date-time
             * @description When it was made.
             */
            made_at: string;
            /** @description Who made it. */
            made_by: components["schemas"]["PersonRef"];
            /** @description Of the service whose client it is. */
            name: string;
            /** @description Where a person is sent back to, matched to the letter: https, or http to 127.0.0.1 or [::1] with any port (RFC 8252). Empty for a client that acts for itself. */
            redirect_uris: string[];
            /** @description It may ask for these. */
            scopes: components["schemas"]["Scope"][];
        };
        /**
         * @description RFC 6749, 2.1.
         *     * `confidential`: Keeps a secret: it runs on a server.
         *     * `public`: Cannot keep one: it runs on people's own devices.
         * @enum {string}
         */
        ClientType: "confidential" | "public";
        /** @description A client that was just stored, with its secret, which is shown this once. */
        ClientWithSecret: {
            /** @description The client that it is about. */
            client: components["schemas"]["ClientShown"];
            /** @description Null for a public client. */
            client_secret: string | null;
        };
        /** @description The visit ends. */
        ClosePayload: {
            /** @description The access cavity was closed for the time until the next visit. */
            access_sealed: boolean;
            /** @description What was left in the canals; None where nobody said. */
            dressing: components["schemas"]["Dressing"] | null;
            /**
             * @description Which kind it is: it tells the members of a choice apart. (enum property replaced by openapi-typescript)
             * @enum {string}
             */
            kind: "close";
            /** @description A remark, or empty. */
            note: string;
            /** @description What the access was sealed with. */
            temporary: components["schemas"]["Temporary"] | null;
        };
        /** @description The visit ends. */
        ClosePayloadRequest: {
            /** @description The access cavity was closed for the time until the next visit. */
            access_sealed: boolean;
            /**
             * @description What was left in the canals; None where nobody said.
             * @default null
             */
            dressing?: components["schemas"]["Dressing"] | null;
            /**
             * @description Which kind it is: it tells the members of a choice apart. (enum property replaced by openapi-typescript)
             * @enum {string}
             */
            kind: "close";
            /**
             * @description A remark, or empty.
             * @default
             */
            note?: string;
            /**
             * @description What the access was sealed with.
             * @default null
             */
            temporary?: components["schemas"]["Temporary"] | null;
        };
        /** @description A one-time code. */
        CodeGivenRequest: {
            /** @description Which one it is, in a word that stays the same. */
            code: string;
        };
        /** @description A new secret, and its address drawn as a QR code, which is worked out here. */
        CodeSecretShown: {
            /** @description `otpauth://totp/...`: the same for a code app on this phone. */
            address: string;
            /** @description Base 32 (RFC 4648), to be typed into a code app. */
            secret: string;
            /** @description The address as a QR code (ISO/IEC 18004): rows of 0 and 1. */
            square: string[];
        };
        /** @description A column of an exported table. */
        ColumnShown: {
            /** @description Empty where the name says it all. */
            meaning: string;
            /** @description Of the column, its unit as the last part. */
            name: string;
            /** @description In CSV a `json` column holds JSON text. */
            type: components["schemas"]["ColumnType"];
            /** @description Null for what has none, such as a count. */
            unit: string | null;
        };
        /**
         * @description * `json`: A list, an object, or any other; in CSV its JSON text.
         * @enum {string}
         */
        ColumnType: "id" | "text" | "moment" | "whole" | "number" | "yes_no" | "json";
        /** @description A supervisor comes to the chair before deciding. */
        ComePayload: {
            /**
             * @description Which kind it is: it tells the members of a choice apart. (enum property replaced by openapi-typescript)
             * @enum {string}
             */
            kind: "come";
            /** @description A remark, or empty. */
            note: string;
        };
        /** @description A supervisor comes to the chair before deciding. */
        ComePayloadRequest: {
            /**
             * @description Which kind it is: it tells the members of a choice apart. (enum property replaced by openapi-typescript)
             * @enum {string}
             */
            kind: "come";
            /**
             * @description A remark, or empty.
             * @default
             */
            note?: string;
        };
        /** @description An instrument at a known stop, and where its tip lies on the image. */
        ConfirmingImage: {
            /**
             * after coronal flaring
             * @description It was taken after coronal flaring.
             */
            after_flaring: boolean;
            /**
             * how sure its marks are
             * @description Of the tip's distance; None where it was not marked on an image.
             */
            interval: components["schemas"]["ImageInterval"] | null;
            /**
             * @description How it was measured: it tells the kinds of readings apart. (enum property replaced by openapi-typescript)
             * @enum {string}
             */
            method: "confirming_image";
            /**
             * reference point
             * @description Where on the crown lengths are measured from; empty: not chosen.
             */
            reference_point: string;
            /**
             * stop that was set
             * @description The stop that was actually set.
             */
            set_mm: number;
            /**
             * tip short of the apex
             * @description How far the tip is short of the radiographic apex; below 0 it is past it.
             */
            tip_short_mm: number;
        };
        /** @description An instrument at a known stop, and where its tip lies on the image. */
        ConfirmingImageKept: {
            /**
             * after coronal flaring
             * @description It was taken after coronal flaring.
             */
            after_flaring: boolean;
            /**
             * how sure its marks are
             * @description Of the tip's distance; None where it was not marked on an image.
             */
            interval: components["schemas"]["ImageIntervalKept"] | null;
            /**
             * @description How it was measured: it tells the kinds of readings apart. (enum property replaced by openapi-typescript)
             * @enum {string}
             */
            method: "confirming_image";
            /**
             * reference point
             * @description Where on the crown lengths are measured from; empty: not chosen.
             */
            reference_point: string;
            /**
             * stop that was set
             * @description The stop that was actually set.
             */
            set_mm: number;
            /**
             * tip short of the apex
             * @description How far the tip is short of the radiographic apex; below 0 it is past it.
             */
            tip_short_mm: number;
        };
        /** @description An instrument at a known stop, and where its tip lies on the image. */
        ConfirmingImageRequest: {
            /**
             * after coronal flaring
             * @description It was taken after coronal flaring.
             * @default false
             */
            after_flaring?: boolean;
            /**
             * how sure its marks are
             * @description Of the tip's distance; None where it was not marked on an image.
             * @default null
             */
            interval?: components["schemas"]["ImageIntervalRequest"] | null;
            /**
             * @description How it was measured: it tells the kinds of readings apart. (enum property replaced by openapi-typescript)
             * @enum {string}
             */
            method: "confirming_image";
            /**
             * reference point
             * @description Where on the crown lengths are measured from; empty: not chosen.
             */
            reference_point: string;
            /**
             * stop that was set
             * @description The stop that was actually set.
             */
            set_mm: number;
            /**
             * tip short of the apex
             * @description How far the tip is short of the radiographic apex; below 0 it is past it.
             */
            tip_short_mm: number;
        };
        /** @description An instrument at a known stop, and where its tip lies on the image. */
        ConfirmingImageRequestKept: {
            /**
             * after coronal flaring
             * @description It was taken after coronal flaring.
             * @default false
             */
            after_flaring?: boolean;
            /**
             * how sure its marks are
             * @description Of the tip's distance; None where it was not marked on an image.
             * @default null
             */
            interval?: components["schemas"]["ImageIntervalRequestKept"] | null;
            /**
             * @description How it was measured: it tells the kinds of readings apart. (enum property replaced by openapi-typescript)
             * @enum {string}
             */
            method: "confirming_image";
            /**
             * reference point
             * @description Where on the crown lengths are measured from; empty: not chosen.
             */
            reference_point: string;
            /**
             * stop that was set
             * @description The stop that was actually set.
             */
            set_mm: number;
            /**
             * tip short of the apex
             * @description How far the tip is short of the radiographic apex; below 0 it is past it.
             */
            tip_short_mm: number;
        };
        /** @description A stored client, as much of it as the person needs for whom it acts. */
        ConsentClient: {
            /**
             * Format: uuid
             * @description Its own id.
             */
            id: string;
            /** @description Its name, for people. */
            name: string;
            /** @description The programme. */
            programme: components["schemas"]["KeyProgramme"];
        };
        /** @description What a person lets clients do for them. */
        ConsentList: {
            /** @description Address of the next page; null: this is the last. */
            readonly next: string | null;
            /** @description Address of the page before; null: this is the first. */
            readonly previous: string | null;
            /** @description The rows of this page. */
            results: components["schemas"]["ConsentShown"][];
        };
        /** @description The stored consent of the person who asks. */
        ConsentShown: {
            /** @description The client that it is about. */
            client: components["schemas"]["ConsentClient"];
            /**
             * Format: date-time
             * @description First.
             */
            given_at: string;
            /**
             * Format: uuid
             * @description Its own id.
             */
            id: string;
            /** @description What the key opens. */
            scopes: components["schemas"]["Scope"][];
        };
        /** @description How long an irrigant stays in the canal. */
        Contact: {
            /** @description About how many seconds it stays. */
            about_s: number;
            /** @description What the canal is rinsed with; null: nothing. */
            irrigant: string;
            /** @description The phone warns when it stays longer than this. */
            most_s: number;
            /** @description The figures that the two times come from. */
            rows: components["schemas"]["Figure"][];
        };
        /** @description An emergency is corrected. The tooth stands still until a supervisor resumes. */
        CorrectedPayload: {
            /** @description Id of the emergency. */
            corrects: string;
            /**
             * @description Which kind it is: it tells the members of a choice apart. (enum property replaced by openapi-typescript)
             * @enum {string}
             */
            kind: "corrected";
            /** @description A remark, or empty. */
            note: string;
            /** @description What it was instead; None: it was not so, a false alarm. */
            what: components["schemas"]["Emergency"] | null;
        };
        /** @description An emergency is corrected. The tooth stands still until a supervisor resumes. */
        CorrectedPayloadRequest: {
            /** @description Id of the emergency. */
            corrects: string;
            /**
             * @description Which kind it is: it tells the members of a choice apart. (enum property replaced by openapi-typescript)
             * @enum {string}
             */
            kind: "corrected";
            /**
             * @description A remark, or empty.
             * @default
             */
            note?: string;
            /**
             * @description What it was instead; None: it was not so, a false alarm.
             * @default null
             */
            what?: components["schemas"]["Emergency"] | null;
        };
        /** @description Where the work on the tooth stands: a choice from the fold, which holds run sheets and sets besides. */
        CourseShown: {
            /** @description The visit was closed and waits for a supervisor's check. */
            check_due: boolean;
            /** @description No visit is under way. */
            closed: boolean;
            /** @description As last said in this visit. */
            dam: components["schemas"]["Dam"] | null;
            /** @description The emergency that stopped the work. */
            halted_by: string | null;
            /** @description What has to be there before any canal is worked. */
            missing: components["schemas"]["Prerequisite"][];
            /** @description Id of the licensed clinician in the room, or empty. */
            on_site: string;
            /** @description Of the events of the answer those that are kept and move nothing, by id, each with the reason. */
            out_of_course: {
                [key: string]: components["schemas"]["OutOfCourse"];
            };
            /** @description Hash of the plan that is worked by; empty: none yet. */
            plan_hash: string;
            /** @description The emergency since which every canal is irrigated with saline alone. */
            saline_by: string | null;
            /** @description Id of the supervisor who works the case beside its student, or empty. */
            taken_over: string;
            /** @description The canal in hand, or empty. */
            turned_to: string;
            /** @description Events that an undo took out. */
            undone: string[];
        };
        /** @description How a canal curves, measured from points tapped on an image. */
        Curvature: {
            /** @description Schneider's: between the coronal axis and the line from where the canal leaves it to the end. */
            angle_deg: number;
            /** @description The best known first; empty for a straight canal. */
            arcs: components["schemas"]["Arc"][];
            /** @description From where it leaves the axis to the end. */
            chord_mm: number;
            /** @description What each published scheme calls the angle, or the angle in space where there are two views. */
            classes: components["schemas"]["CurveClass"][];
            /** @description Of both views together; None with one view. */
            in_space_deg: number | null;
        };
        /** @description Points tapped on an image, in mm in the plane of the image. */
        CurvatureRequest: {
            /** @description Points tapped along the curve. */
            curve: components["schemas"]["TappedCurveRequest"];
            /**
             * @description The programme's own values in place of figures of the data tables, by key.
             * @default {}
             */
            thresholds?: {
                [key: string]: number;
            };
        };
        /** @description What one published scheme calls the angle. */
        CurveClass: {
            /** @description How it is known. */
            know: string;
            /** @description None: the scheme has no name for this angle. */
            name: string | null;
            /** @description The published scheme. */
            scheme: string;
            /** @description Where it is from. */
            source: string;
        };
        /**
         * @description How the rubber dam is.
         * @enum {string}
         */
        Dam: "on" | "off" | "leaking";
        /** @description How the dam was found. In the clinic nothing goes on unless it is on. */
        DamPayload: {
            /**
             * @description Which kind it is: it tells the members of a choice apart. (enum property replaced by openapi-typescript)
             * @enum {string}
             */
            kind: "dam";
            /** @description How it is. */
            state: components["schemas"]["Dam"];
        };
        /** @description How the dam was found. In the clinic nothing goes on unless it is on. */
        DamPayloadRequest: {
            /**
             * @description Which kind it is: it tells the members of a choice apart. (enum property replaced by openapi-typescript)
             * @enum {string}
             */
            kind: "dam";
            /** @description How it is. */
            state: components["schemas"]["Dam"];
        };
        /**
         * @description What a supervisor decides on a submitted plan.
         * @enum {string}
         */
        Decision: "approved" | "returned";
        /** @description A supervisor's decision on a version of the plan. */
        DecisionRecord: {
            /** @description What must be put right and was acknowledged by its name. */
            acknowledged: components["schemas"]["AcknowledgedRecord"][];
            /**
             * Format: date-time
             * @description When it was.
             */
            at: string;
            /** @description What the supervisor decided. */
            decision: components["schemas"]["Decision"];
            /** @description A remark, or empty. */
            note: string;
            /** @description What the supervisor measured beside the plan. */
            own_lengths: components["schemas"]["OwnLength"][];
            /** @description The person's name. */
            who: components["schemas"]["RecordPerson"];
        };
        /** @description One page of messages to a webhook. */
        DeliveryPage: {
            /**
             * Format: uri
             * @description Address of the next page; null: this is the last.
             */
            next: string | null;
            /**
             * Format: uri
             * @description Address of the page before; null: this is the first.
             */
            previous: string | null;
            /** @description The rows of this page. */
            results: components["schemas"]["DeliveryShown"][];
        };
        /** @description A stored message to a webhook, and what came of it last. */
        DeliveryShown: {
            /**
             * Format: uuid
             * @description Id of the case.
             */
            case_id: string | null;
            /**
             * Format: date-time
             * @description When it was made.
             */
            created_at: string;
            /**
             * Format: date-time
             * @description When it is sent next, while it waits.
             */
            due_at: string;
            /**
             * Format: date-time
             * @description Null: not yet.
             */
            first_tried_at: string | null;
            /**
             * Format: uuid
             * @description Its own id.
             */
            id: string;
            /** @description Which kind it is: it tells the members of a choice apart. */
            kind?: components["schemas"]["FeedKind"] | null;
            /**
             * Format: date-time
             * @description Null: not yet.
             */
            last_tried_at: string | null;
            /** @description Why there was none. */
            no_answer: components["schemas"]["NoAnswer"] | null;
            /** @description Of the change; null: a test message. */
            position: number | null;
            /** @description How it is. */
            state: components["schemas"]["DeliveryState"];
            /** @description Of the last answer; null: there was none. */
            status: number | null;
            /** @description How often it was sent. */
            tries: number;
        };
        /**
         * @description * `failed`: A test message that was not taken: it is sent once.
         *     * `replaced`: It waited when the webhook was told to go on from elsewhere.
         * @enum {string}
         */
        DeliveryState: "waiting" | "delivered" | "failed" | "replaced";
        /** @description Something that was not as planned, in one line. */
        Deviation: {
            /** @description Empty where it concerns the whole tooth. */
            canal: string;
            /** @description Its place in the timeline, where it is one entry. */
            position: number | null;
            /** @description What it was. */
            says: string;
            /** @description How grave it is. */
            sign: components["schemas"]["Severity"];
        };
        /** @description How thick an instrument is at a distance from its tip. */
        DiameterAt: {
            /**
             * diameter
             * @description Diameter there, in millimetres.
             */
            diameter_mm: number;
            /**
             * from the tip
             * @description Millimetres from the tip.
             */
            from_tip_mm: number;
        };
        /** @description How thick an instrument is at a distance from its tip. */
        DiameterAtRequest: {
            /**
             * diameter
             * @description Diameter there, in millimetres.
             */
            diameter_mm: number;
            /**
             * from the tip
             * @description Millimetres from the tip.
             */
            from_tip_mm: number;
        };
        /** @description How difficult the case is, and what it was counted from. */
        Difficulty: {
            /** @description Factors above low, those that decide the level first. */
            factors: components["schemas"]["FactorFound"][];
            /** @description How it is known. */
            know: string;
            /** @description How difficult it is. */
            level: components["schemas"]["Level"];
            /** @description The counting rule in one sentence, with the counts of this case. */
            rule: string;
            /** @description Where it is from. */
            source: string;
        };
        /** @description What can make a case difficult. What is recorded of a case are codes of levels, one of a factor at most. */
        DifficultyFactors: {
            /** @description Address of the next page; null: this is the last. */
            next: string | null;
            /** @description Address of the page before; null: this is the first. */
            previous: string | null;
            /** @description The rows of this page. */
            results: components["schemas"]["Factor"][];
        };
        /** @description The tip seen at the end: of a training block's canal, or at an extracted tooth's foramen. */
        DirectSight: {
            /**
             * after coronal flaring
             * @description It was taken after coronal flaring.
             */
            after_flaring: boolean;
            /**
             * @description How it was measured: it tells the kinds of readings apart. (enum property replaced by openapi-typescript)
             * @enum {string}
             */
            method: "direct_sight";
            /**
             * reference point
             * @description Where on the crown lengths are measured from; empty: not chosen.
             */
            reference_point: string;
            /**
             * seen at
             * @description Where the tip was seen, in millimetres from the reference point.
             */
            seen_mm: number;
        };
        /** @description The tip seen at the end: of a training block's canal, or at an extracted tooth's foramen. */
        DirectSightKept: {
            /**
             * after coronal flaring
             * @description It was taken after coronal flaring.
             */
            after_flaring: boolean;
            /**
             * @description How it was measured: it tells the kinds of readings apart. (enum property replaced by openapi-typescript)
             * @enum {string}
             */
            method: "direct_sight";
            /**
             * reference point
             * @description Where on the crown lengths are measured from; empty: not chosen.
             */
            reference_point: string;
            /**
             * seen at
             * @description Where the tip was seen, in millimetres from the reference point.
             */
            seen_mm: number;
        };
        /** @description The tip seen at the end: of a training block's canal, or at an extracted tooth's foramen. */
        DirectSightRequest: {
            /**
             * after coronal flaring
             * @description It was taken after coronal flaring.
             * @default false
             */
            after_flaring?: boolean;
            /**
             * @description How it was measured: it tells the kinds of readings apart. (enum property replaced by openapi-typescript)
             * @enum {string}
             */
            method: "direct_sight";
            /**
             * reference point
             * @description Where on the crown lengths are measured from; empty: not chosen.
             */
            reference_point: string;
            /**
             * seen at
             * @description Where the tip was seen, in millimetres from the reference point.
             */
            seen_mm: number;
        };
        /** @description The tip seen at the end: of a training block's canal, or at an extracted tooth's foramen. */
        DirectSightRequestKept: {
            /**
             * after coronal flaring
             * @description It was taken after coronal flaring.
             * @default false
             */
            after_flaring?: boolean;
            /**
             * @description How it was measured: it tells the kinds of readings apart. (enum property replaced by openapi-typescript)
             * @enum {string}
             */
            method: "direct_sight";
            /**
             * reference point
             * @description Where on the crown lengths are measured from; empty: not chosen.
             */
            reference_point: string;
            /**
             * seen at
             * @description Where the tip was seen, in millimetres from the reference point.
             */
            seen_mm: number;
        };
        /** @description An instrument that was taken out of use. */
        Discarded: {
            /**
             * Format: date-time
             * @description When it was.
             */
            at: string;
            /** @description The canal by its name; empty or null for the whole tooth. */
            canal: string;
            /** @description The instrument, by its key. */
            instrument: string;
            /** @description Position of the event in the case. */
            position: number;
            /** @description The person's name. */
            who: components["schemas"]["RecordPerson"];
            /** @description Why. */
            why: string;
        };
        /** @description A mark about which the person who set it is asked; it is measured all the same. */
        Doubt: {
            /** @description Which kind it is: it tells the members of a choice apart. */
            kind: components["schemas"]["DoubtKind"];
            /** @description Number of the point on the line, from 0. */
            point: number;
        };
        /**
         * @description * `turns_back`: The line runs back from here: marks are out of order, or one was misplaced.
         *     * `sharp`: The line turns here more sharply than any canal: a mark was misplaced.
         * @enum {string}
         */
        DoubtKind: "turns_back" | "sharp";
        /**
         * @description What was left in the canals until the next visit.
         * @enum {string}
         */
        Dressing: "none" | "calcium_hydroxide" | "other";
        /**
         * @description What stopped the work.
         * @enum {string}
         */
        Emergency: "instrument_separated" | "perforation_suspected" | "hypochlorite_accident" | "sudden_bleeding" | "sudden_pain_or_swelling" | "inhaled_or_swallowed" | "collapse" | "splash_in_eye" | "splash_on_skin" | "sharps_injury";
        /** @description The whole tooth stands still. */
        EmergencyPayload: {
            /**
             * @description Ids of events that the teller had recorded before it and not sent yet. The emergency is sent first, and its halt
             *     does not stop what was done before it.
             */
            before: string[];
            /**
             * @description Which kind it is: it tells the members of a choice apart. (enum property replaced by openapi-typescript)
             * @enum {string}
             */
            kind: "emergency";
            /** @description A remark, or empty. */
            note: string;
            /** @description Which thing it is about. */
            what: components["schemas"]["Emergency"];
        };
        /** @description The whole tooth stands still. */
        EmergencyPayloadRequest: {
            /**
             * @description Ids of events that the teller had recorded before it and not sent yet. The emergency is sent first, and its halt
             *     does not stop what was done before it.
             * @default []
             */
            before?: string[];
            /**
             * @description Which kind it is: it tells the members of a choice apart. (enum property replaced by openapi-typescript)
             * @enum {string}
             */
            kind: "emergency";
            /**
             * @description A remark, or empty.
             * @default
             */
            note?: string;
            /** @description Which thing it is about. */
            what: components["schemas"]["Emergency"];
        };
        /** @description An emergency that halts the tooth. */
        EmergencySummary: {
            /**
             * Format: date-time
             * @description When the server had it.
             */
            at: string;
            /** @description Name of the supervisor who goes there, or empty. */
            coming: string;
            /** @description Name of the person who corrected it last; empty where nobody did. */
            corrected_by: string;
            /** @description Name. */
            told_by: string;
            /** @description As last said; empty where it was not so. */
            what: string;
        };
        /** @description A run sheet's end. */
        End: {
            /** @description Its own id. */
            id: string;
            /**
             * @description Which kind it is: it tells the members of a choice apart. (enum property replaced by openapi-typescript)
             * @enum {string}
             */
            kind: "end";
            /** @description What the walk comes to. */
            outcome: components["schemas"]["Outcome"];
            /** @description What is said at the end. */
            say: string;
        };
        /** @description Something that another system did for a person: a service for a student, or a client for whoever let it. */
        Entered: {
            /**
             * Format: date-time
             * @description When it was.
             */
            at: string;
            /** @description The person. */
            person: components["schemas"]["RecordPerson"];
            /** @description It in one sentence, for people. */
            says: string;
            /** @description The service's name. */
            service: string;
        };
        /** @description One event as a device tells it. */
        EventGivenRequest: {
            /** @description Empty where it concerns the whole tooth. */
            canal?: string;
            /** @description Counts the device's events of this case from 1. */
            device_seq: number;
            /**
             * Format: date-time
             * @description Shown, never used to order: the clock may be wrong.
             */
            device_time: string;
            /**
             * Format: uuid
             * @description Made by the device (RFC 9562, version 7), so that sending again is harmless.
             */
            id: string;
            /** @description The step in the run sheet. */
            node?: string;
            /** @description What the event carries, by its kind. */
            payload: components["schemas"]["StepPayloadRequestKept"] | components["schemas"]["AnswerPayloadRequest"] | components["schemas"]["ReadingPayloadRequestKept"] | components["schemas"]["SignOffPayloadRequest"] | components["schemas"]["InspectedPayloadRequest"] | components["schemas"]["TurnPayloadRequest"] | components["schemas"]["PausePayloadRequest"] | components["schemas"]["EmergencyPayloadRequest"] | components["schemas"]["CorrectedPayloadRequest"] | components["schemas"]["ResumePayloadRequest"] | components["schemas"]["ClosePayloadRequest"] | components["schemas"]["ReopenPayloadRequest"] | components["schemas"]["ReplanPayloadRequest"] | components["schemas"]["RevokedPayloadRequest"] | components["schemas"]["ReleasePayloadRequest"] | components["schemas"]["AskPayloadRequest"] | components["schemas"]["ComePayloadRequest"] | components["schemas"]["WantedPayloadRequest"] | components["schemas"]["StruckPayloadRequest"] | components["schemas"]["TakeOverPayloadRequest"] | components["schemas"]["GiveBackPayloadRequest"] | components["schemas"]["OnSitePayloadRequest"] | components["schemas"]["DamPayloadRequest"] | components["schemas"]["ImagePayloadRequest"] | components["schemas"]["IrrigatedPayloadRequestKept"] | components["schemas"]["NotePayloadRequest"] | components["schemas"]["UndoPayloadRequest"];
            /** @description Of the plan on the screen. */
            plan_hash: string;
            /** @description The last position the device knew. */
            seen_position: number;
        };
        /**
         * @description * `step`: A step was left by one of its exits; the body says which, how deep, and the stop that was shown.
         *     * `answer`: Says why an instrument went past its stop; such a step opens that question.
         *     * `reading`: A length was taken: the canal waits until its stops are computed from it.
         *     * `sign_off`: A supervisor answered a hold point.
         *     * `inspected`: An instrument was looked at: whole, or discarded.
         *     * `turn`: The hand went over to another canal.
         *     * `pause`: Work on one canal stands still.
         *     * `emergency`: Work on the tooth stands still.
         *     * `corrected`: An emergency is corrected: it was something else, or it was not so. The work stands still as before.
         *     * `resume`: A supervisor lets the work go on.
         *     * `close`: The visit ends.
         *     * `reopen`: The next visit begins; the body says which canals were found as they were left.
         *     * `replan`: A plan comes into force, the first one or a later one, and takes over where the work stands.
         *     * `revoked`: The approval of the plan in force was withdrawn: nothing is worked until a plan is approved again.
         *     * `release`: A supervisor decided on a plan and says which of its canals may not be worked yet.
         *     * `ask`: The student asks for a supervisor's sign-off.
         *     * `come`: A supervisor answers: to the chair.
         *     * `wanted`: A supervisor asks to be shown something: an image of a canal.
         *     * `take_over`: A supervisor works the case from here on, beside or instead of its student.
         *     * `give_back`: The supervisor who took over works it no more.
         *     * `struck`: A reading that the plan may rest on was struck: its canal waits until its stops are computed anew. Or an image
         *     was struck, or put to another canal.
         *     * `on_site`: Which licensed clinician is in the room for this visit.
         *     * `dam`: The dam is on, off or leaking.
         *     * `image`: An image was taken; the image itself may still be on the phone.
         *     * `irrigated`: The canal was irrigated once more than the order of work asks for.
         *     * `undo`: An earlier event is taken back: it no longer counts, and both stay in the record.
         * @enum {string}
         */
        EventKind: "step" | "answer" | "reading" | "sign_off" | "inspected" | "turn" | "pause" | "emergency" | "corrected" | "resume" | "close" | "reopen" | "replan" | "revoked" | "release" | "ask" | "come" | "wanted" | "take_over" | "give_back" | "struck" | "on_site" | "dam" | "image" | "irrigated" | "note" | "undo";
        /** @description A stored event, with its payload as it was kept. */
        EventShown: {
            /** @description Who did it. */
            actor: components["schemas"]["PersonRef"];
            /** @description The canal by its name; empty or null for the whole tooth. */
            canal: string;
            /**
             * Format: uuid
             * @description Id that the device made for itself.
             */
            device_id: string;
            /** @description Counts the device's events of this case from 1. */
            device_seq: number;
            /**
             * Format: date-time
             * @description When it was by the device's clock; it orders nothing.
             */
            device_time: string;
            /**
             * Format: uuid
             * @description Its own id.
             */
            id: string;
            /** @description The step, by its id in the run sheet. */
            node: string;
            /** @description Why it could not be checked when it came in, or empty. It is kept all the same: plan, depth, length, point, room_left, room. */
            not_checked: string;
            /** @description What the event carries, by its kind. */
            payload: components["schemas"]["StepPayloadKept"] | components["schemas"]["AnswerPayload"] | components["schemas"]["ReadingPayloadKept"] | components["schemas"]["SignOffPayload"] | components["schemas"]["InspectedPayload"] | components["schemas"]["TurnPayload"] | components["schemas"]["PausePayload"] | components["schemas"]["EmergencyPayload"] | components["schemas"]["CorrectedPayload"] | components["schemas"]["ResumePayload"] | components["schemas"]["ClosePayload"] | components["schemas"]["ReopenPayload"] | components["schemas"]["ReplanPayload"] | components["schemas"]["RevokedPayload"] | components["schemas"]["ReleasePayload"] | components["schemas"]["AskPayload"] | components["schemas"]["ComePayload"] | components["schemas"]["WantedPayload"] | components["schemas"]["StruckPayload"] | components["schemas"]["TakeOverPayload"] | components["schemas"]["GiveBackPayload"] | components["schemas"]["OnSitePayload"] | components["schemas"]["DamPayload"] | components["schemas"]["ImagePayload"] | components["schemas"]["IrrigatedPayloadKept"] | components["schemas"]["NotePayload"] | components["schemas"]["UndoPayload"];
            /** @description Hash of the plan that was worked by. */
            plan_hash: string;
            /** @description The order, given here. */
            position: number;
            /**
             * Format: date-time
             * @description When the server got it.
             */
            server_time: string;
        };
        /** @description An exercise to be begun. */
        ExerciseGivenRequest: {
            /**
             * Format: uuid
             * @description Made by the sender, so that sending again is harmless.
             */
            id?: string;
            /** @description Left out: the level that is proposed. */
            level?: string | null;
            /**
             * Format: uuid
             * @description Of a task that is set; its level counts.
             */
            task_id?: string | null;
        };
        /** @description A stored exercise without what was done in it. */
        ExerciseListed: {
            /**
             * Format: date-time
             * @description When it was made.
             */
            created_at: string;
            /**
             * Format: date-time
             * @description Null: it goes on.
             */
            ended_at: string | null;
            /**
             * Format: uuid
             * @description Its own id.
             */
            id: string;
            /** @description Key of the level. */
            level: string;
            /** @description Null until it is ended, and where it was ended before all canals were worked. */
            score: components["schemas"]["PracticeScore"] | null;
            /** @description The student whose case it is. */
            student: components["schemas"]["PersonRef"];
            /**
             * Format: uuid
             * @description Null: begun by the student.
             */
            task_id: string | null;
        };
        /** @description A stored exercise. What is hidden in it is shown once it is ended. */
        ExerciseShown: {
            /** @description In the order in which they are worked. */
            canals: components["schemas"]["PracticeCanal"][];
            /**
             * Format: date-time
             * @description When it was made.
             */
            created_at: string;
            /** @description In order. */
            done: components["schemas"]["ActDone"][];
            /** @description Null: all canals are worked, or it was ended. */
            due: components["schemas"]["StepDue"] | null;
            /**
             * Format: date-time
             * @description Null: it goes on.
             */
            ended_at: string | null;
            /**
             * Format: uuid
             * @description Its own id.
             */
            id: string;
            /** @description Key of the level. */
            level: string;
            /** @description Null until it is ended, and where the planner was renewed since it was begun. */
            reveal: components["schemas"]["PracticeReveal"] | null;
            /** @description The ETag begins with it: If-Match takes it alone. */
            revision: number;
            /** @description Null until it is ended, and where it was ended before all canals were worked. */
            score: components["schemas"]["PracticeScore"] | null;
            /** @description The student whose case it is. */
            student: components["schemas"]["PersonRef"];
            /**
             * Format: uuid
             * @description Null: begun by the student.
             */
            task_id: string | null;
        };
        /**
         * @description How a step is left. The set is closed: a walker that meets another stops and asks for an update.
         * @enum {string}
         */
        Exit: "done" | "reached" | "short" | "blocked" | "approved" | "returned" | "yes" | "no";
        /** @description The contact-depth estimate of one canal. */
        Expectation: {
            /** @description Hardly any sample fits the recorded depths, so the bands are not to be relied on. */
            few_agree: boolean;
            /** @description How wide the canal is before anything has been in it. */
            initial_shape: components["schemas"]["InitialShape"];
            /** @description A larger size is expected to be needed to make room. */
            makes_room: boolean;
            /** @description The widths narrow towards the orifice somewhere, so load may fall with depth. */
            narrows: boolean;
            /** @description Outline of the canal before the first of the steps, where instruments have been in it; else empty. */
            prepared: components["schemas"]["ProfilePoint"][];
            /** @description How many canals were drawn. */
            samples: number;
            /** @description None in a technique without a descending series. */
            series_passes: components["schemas"]["SeriesPasses"] | null;
            /** @description The steps, in order. */
            steps: components["schemas"]["ExpectedStep"][];
        };
        /** @description One insertion of one instrument on the expected path. */
        ExpectedStep: {
            /** @description The canal is bent, and the estimate treats it as straight. */
            as_if_straight: boolean;
            /** @description The same for a depth greater than this, which is deeper than expected. */
            deep_above_mm: number | null;
            /** @description Median of the estimate, from the reference point; the recorded depth where there is one. */
            depth_mm: number;
            /** @description How the recorded depth compares with what was expected just before it; none where nothing was recorded. */
            felt: components["schemas"]["Against"] | null;
            /** @description 90 % of the samples stop short of this. */
            high_mm: number | null;
            /** @description The instrument, by its key. */
            instrument: string;
            /** @description 10 % of the samples stop short of this; none without samples or once recorded. */
            low_mm: number | null;
            /** @description The step in the run sheet. */
            node: string;
            /** @description Which time the step is worked, from 1: in the descending series, the pass. */
            pass_number: number;
            /** @description Share of the samples that reach the stop. */
            reach_share: number | null;
            /** @description Volume that this insertion takes off the wall: the part of its round shape that was not canal before. */
            removes_mm3: number;
            /** @description Outline of the canal after it, reference point side first. */
            shape: components["schemas"]["ProfilePoint"][];
            /**
             * @description A recorded depth less than this is shorter than expected; one correct depth in a hundred is. None without
             *     samples, once a depth is recorded, and in older plans.
             */
            short_below_mm: number | null;
        };
        /** @description What can be exported of a programme, and where its changes stand. */
        ExportShown: {
            /** @description Where the programme's changes stand: the tables hold all up to here, and what came in since may be in them. Asked again at the end, the same: they hold at just this point. Else ask for the changes `after` it. */
            changes_after: string;
            /** @description All that there are. */
            tables: components["schemas"]["TableShown"][];
        };
        /** @description One image, and the canals that it shows beside each other. */
        Exposure: {
            /** @description The canals, each once. */
            canals: string[];
            /** @description Taken from another angle, which shows apart what lies one behind the other on the first image. */
            turned: boolean;
        };
        /** @description The key by which the service knows something. */
        ExternalIdGivenRequest: {
            /** @description The key of a row in the other system. Names, dates of birth and numbers of people have no place in it. */
            external_id: string;
        };
        /** @description A stored key, for the service whose it is. */
        ExternalIdShown: {
            /** @description The key by which the service knows it. */
            external_id: string;
        };
        /** @description Something that can make a case difficult. */
        Factor: {
            /** @description A plan works it out; a person may record it as well, and the higher level counts. */
            from_plan: boolean;
            /** @description What it is grouped by. */
            group: components["schemas"]["FactorGroup"];
            /** @description Which one it is, in a word that stays the same. */
            key: string;
            /** @description How it is known. */
            know: string;
            /** @description Its levels, each with what it is. */
            levels: components["schemas"]["FactorLevel"][];
            /** @description Where it is from. */
            source: string;
            /** @description What it is called. */
            title: string;
        };
        /** @description One factor of this case. */
        FactorFound: {
            /** @description Which one it is, in a word that stays the same. */
            code: string;
            /** @description Worked out from what the plan holds; otherwise recorded by a person. */
            from_plan: boolean;
            /** @description How it is known. */
            know: string;
            /** @description How difficult it is. */
            level: components["schemas"]["Level"];
            /** @description It in one sentence, for people. */
            says: string;
            /** @description Where it is from. */
            source: string;
        };
        /**
         * @description What a factor of difficulty belongs to.
         * @enum {string}
         */
        FactorGroup: "patient" | "diagnosis" | "tooth" | "additional";
        /** @description One level of a factor of difficulty. */
        FactorLevel: {
            /** @description As it is recorded: the factor's key, a colon, the level. */
            code: string;
            /** @description How difficult it is. */
            level: components["schemas"]["Level"];
            /** @description It in one sentence, for people. */
            says: string;
        };
        /**
         * @description * `case_changed`: Its facts, its supervisor, or the patient's alias.
         *     * `reading_taken`: A length, or where the canal joins another.
         *     * `image_checked`: Somebody looked, and it names nobody.
         *     * `image_moved`: To the canal it is of.
         *     * `version_withdrawn`: The student takes the asking back.
         *     * `version_revoked`: The approval was withdrawn.
         *     * `version_released`: More of its canals may be worked.
         *     * `version_carried_over`: The approval of the one before holds for it.
         *     * `version_taken_up_again`: The same content was proposed once more.
         *     * `event`: Something was done at the chair; `event` says what.
         *     * `person_changed`: Somebody joined or left the programme, or their name, role or group is another.
         * @enum {string}
         */
        FeedKind: "case_opened" | "case_changed" | "canal_added" | "canal_changed" | "canal_removed" | "root_changed" | "reading_taken" | "reading_struck" | "bend_combined" | "image_announced" | "image_stored" | "image_refused" | "image_checked" | "image_marked" | "image_struck" | "image_moved" | "image_removed" | "version_made" | "version_submitted" | "version_withdrawn" | "version_approved" | "version_returned" | "version_revoked" | "version_released" | "version_carried_over" | "version_superseded" | "version_taken_up_again" | "override_given" | "override_withdrawn" | "event" | "person_changed" | "kit_changed" | "technique_added" | "figures_changed" | "widths_changed";
        /** @description One figure with where it comes from. */
        Figure: {
            /** @description Which one it is, in a word that stays the same. */
            key: string;
            /** @description How it is known. */
            know: string;
            /** @description The programme. */
            programme: boolean;
            /** @description It in one sentence, for people. */
            says: string;
            /** @description Where it is from. */
            source: string;
            /** @description The unit. */
            unit: string;
            /** @description The value. */
            value: number;
        };
        /** @description A programme's own value in place of a published one. */
        FigureGivenRequest: {
            /** @description In the figure's own unit, within its least and most. */
            value: number;
        };
        /** @description A figure the planner rests on, and what the programme may set in its place. */
        FigureShown: {
            /** @description Which one it is, in a word that stays the same. */
            key: string;
            /** @description How the published value is known. */
            know: string;
            /** @description Least value that a programme may set. */
            least: number;
            /** @description The most that the programme may set. */
            most: number;
            /** @description Set by the programme. */
            own: boolean;
            /** @description The published value. */
            published: number;
            /** @description It in one sentence, for people. */
            says: string;
            /** @description Of the published value. */
            source: string;
            /** @description The unit. */
            unit: string;
            /** @description The programme's own, or else the published one. */
            value: number;
        };
        /** @description The figures that plans rest on. */
        FiguresShown: {
            /** @description Address of the next page; null: this is the last. */
            next: string | null;
            /** @description Address of the page before; null: this is the first. */
            previous: string | null;
            /** @description The rows of this page. */
            results: components["schemas"]["FigureShown"][];
        };
        /** @description A cone, plugger or spreader of the kit. */
        FillingItem: {
            /**
             * kind
             * @description Which kind it is: it tells the members of a choice apart.
             */
            kind: components["schemas"]["FillingKind"];
            /**
             * size
             * @description Tip in hundredths of a millimetre.
             */
            size: number;
            /**
             * taper
             * @description Hundredths of a millimetre per millimetre.
             */
            taper: number;
        };
        /** @description A cone, plugger or spreader of the kit. */
        FillingItemRequest: {
            /**
             * kind
             * @description Which kind it is: it tells the members of a choice apart.
             */
            kind: components["schemas"]["FillingKind"];
            /**
             * size
             * @description Tip in hundredths of a millimetre.
             */
            size: number;
            /**
             * taper
             * @description Hundredths of a millimetre per millimetre.
             */
            taper: number;
        };
        /**
         * @description What the canal is filled with or by.
         * @enum {string}
         */
        FillingKind: "cone" | "plugger" | "spreader";
        /**
         * @description Whether the canal's orifice has been seen.
         * @enum {string}
         */
        Finding: "expected" | "found" | "searched_not_found";
        /** @description A stored membership that ended, with its person. */
        FormerMemberShown: {
            /**
             * Format: date-time
             * @description When it ended.
             */
            ended_at: string;
            /** @description Who ended it. */
            ended_by: components["schemas"]["PersonRef"];
            /** @description What it is grouped by. */
            group: string;
            /**
             * Format: date-time
             * @description When they joined the programme.
             */
            joined_at: string;
            /** @description The person. */
            person: components["schemas"]["PersonRef"];
            /** @description What the person is in the programme. */
            role: components["schemas"]["Role"];
        };
        /** @description One page of who belonged to the programme. */
        FormerPeoplePage: {
            /**
             * Format: uri
             * @description Address of the next page; null: this is the last.
             */
            next: string | null;
            /**
             * Format: uri
             * @description Address of the page before; null: this is the first.
             */
            previous: string | null;
            /** @description The rows of this page. */
            results: components["schemas"]["FormerMemberShown"][];
        };
        /** @description One canal at the beginning of the next visit. */
        Found: {
            /** @description The canal by its name; empty or null for the whole tooth. */
            canal: string;
            /** @description A locator or an image agrees with the length before; None where there was none. */
            length_agrees: boolean | null;
            /** @description Where lengths are measured from now, if the point has gone: those taken before count no more. */
            reference_point: string;
            /** @description The point that its lengths are measured from is as it was. */
            reference_there: boolean;
            /** @description The small instrument went as deep as before; None in a canal that had not been worked. */
            small_as_deep: boolean | null;
        };
        /** @description One canal at the beginning of the next visit. */
        FoundRequest: {
            /** @description The canal by its name; empty or null for the whole tooth. */
            canal: string;
            /**
             * @description A locator or an image agrees with the length before; None where there was none.
             * @default null
             */
            length_agrees?: boolean | null;
            /**
             * @description Where lengths are measured from now, if the point has gone: those taken before count no more.
             * @default
             */
            reference_point?: string;
            /** @description The point that its lengths are measured from is as it was. */
            reference_there: boolean;
            /**
             * @description The small instrument went as deep as before; None in a canal that had not been worked.
             * @default null
             */
            small_as_deep?: boolean | null;
        };
        /** @description Some instrument of this pass went at least `least_um` deeper than the same one in the pass before. */
        Gained: {
            /** @description The least, in whole micrometres. */
            least_um: number;
            /** @description Steps, by their ids. */
            nodes: string[];
            /**
             * @description Which test it is: it tells the members of a choice apart. (enum property replaced by openapi-typescript)
             * @enum {string}
             */
            test: "gained";
        };
        /** @description The supervisor who took over works it no more. */
        GiveBackPayload: {
            /**
             * @description Which kind it is: it tells the members of a choice apart. (enum property replaced by openapi-typescript)
             * @enum {string}
             */
            kind: "give_back";
        };
        /** @description The supervisor who took over works it no more. */
        GiveBackPayloadRequest: {
            /**
             * @description Which kind it is: it tells the members of a choice apart. (enum property replaced by openapi-typescript)
             * @enum {string}
             */
            kind: "give_back";
        };
        /** @description How a plan's input differs from a version's before the plan is made; the most dangerous difference first. */
        GivenChanges: {
            /** @description The canals, each once. */
            canals: components["schemas"]["CanalGiven"][];
            /** @description Number of the earlier version. */
            from_number: number;
            /** @description The tooth. */
            tooth: components["schemas"]["Change"][];
        };
        /**
         * @description * `look`: What an instrument is looked at for.
         *     * `discard`: Why an instrument is not used again.
         * @enum {string}
         */
        Guidance: "emergency" | "pause" | "look" | "discard";
        /** @description How a halt of the work ended. */
        HaltEnd: {
            /**
             * Format: date-time
             * @description When it was.
             */
            at: string;
            /** @description Position of the event in the case. */
            position: number;
            /** @description Why. */
            reason: string;
            /** @description The person's name. */
            who: components["schemas"]["RecordPerson"];
        };
        /**
         * @description * `pause`: Work on one canal was paused.
         *     * `past_stop`: An instrument went past its stop: its canal stands still.
         *     * `emergency`: The whole tooth stands still.
         * @enum {string}
         */
        HaltKind: "pause" | "past_stop" | "emergency";
        /** @description Why work stood still, and what let it go on. */
        HaltRecord: {
            /**
             * Format: date-time
             * @description When it was.
             */
            at: string;
            /** @description The canal by its name; empty or null for the whole tooth. */
            canal: string;
            /** @description For an instrument past its stop: the answer to why. */
            cause: string;
            /** @description How it ended; null: it goes on. */
            ended: components["schemas"]["HaltEnd"] | null;
            /** @description Which kind it is: it tells the members of a choice apart. */
            kind: components["schemas"]["HaltKind"];
            /** @description Position of the event in the case. */
            position: number;
            /** @description After an emergency the patient has to be seen again by this time; None where no patient has to. */
            review_by: string | null;
            /** @description It in one sentence, for people. */
            says: string;
            /** @description When the next visit was opened. */
            seen_again: string | null;
            /** @description The person's name. */
            who: components["schemas"]["RecordPerson"];
        };
        /** @description How sure a measure is that marks on an image gave. */
        ImageInterval: {
            /**
             * at least, by its marks
             * @description The least, in millimetres.
             */
            least_mm: number;
            /**
             * at most, by its marks
             * @description The most, in millimetres.
             */
            most_mm: number;
            /**
             * what the image's scale rests on
             * @description What the image's scale rested on, as a code.
             */
            rests_on: string;
        };
        /** @description How sure a measure is that marks on an image gave. */
        ImageIntervalKept: {
            /**
             * at least, by its marks
             * @description The least, in millimetres.
             */
            least_mm: number;
            /**
             * at most, by its marks
             * @description The most, in millimetres.
             */
            most_mm: number;
            /**
             * what the image's scale rests on
             * @description What the image's scale rested on, as a code.
             */
            rests_on: string;
        };
        /** @description How sure a measure is that marks on an image gave. */
        ImageIntervalRequest: {
            /**
             * at least, by its marks
             * @description The least, in millimetres.
             */
            least_mm: number;
            /**
             * at most, by its marks
             * @description The most, in millimetres.
             */
            most_mm: number;
            /**
             * what the image's scale rests on
             * @description What the image's scale rested on, as a code.
             */
            rests_on: string;
        };
        /** @description How sure a measure is that marks on an image gave. */
        ImageIntervalRequestKept: {
            /**
             * at least, by its marks
             * @description The least, in millimetres.
             */
            least_mm: number;
            /**
             * at most, by its marks
             * @description The most, in millimetres.
             */
            most_mm: number;
            /**
             * what the image's scale rests on
             * @description What the image's scale rested on, as a code.
             */
            rests_on: string;
        };
        /**
         * @description What was sent, by its content.
         * @enum {string}
         */
        ImageKind: "jpeg" | "png" | "webp" | "tiff" | "heic" | "dicom";
        /** @description One image of a record. */
        ImageListed: {
            /**
             * Format: date-time
             * @description When it was.
             */
            at: string;
            /** @description The canal by its name; empty or null for the whole tooth. */
            canal: string;
            /** @description False where it was struck, or put to another canal. */
            counts: boolean;
            /** @description Id of the image. */
            image_id: string;
            /** @description Position of the event in the case. */
            position: number;
            /** @description What the image was taken for. */
            purpose: string;
            /** @description Who removed its pixels, when and why; null: they are here. */
            removed: components["schemas"]["ImageRemoval"] | null;
            /** @description The person's name. */
            who: components["schemas"]["RecordPerson"];
        };
        /** @description What was marked on one image. */
        ImageMarks: {
            /** @description What the image file says of its pixels; null: nothing. */
            facts: components["schemas"]["SpacingFacts"] | null;
            /** @description Counts before what the file says. */
            known: components["schemas"]["KnownObject"] | null;
            /** @description The canals' lines. */
            lines: components["schemas"]["CanalLine"][];
            /** @description One standard deviation of a mark that does not tell its zoom; None: as the figures have it. */
            tapped_within_px: number | null;
        };
        /** @description What was marked on one image. */
        ImageMarksRequest: {
            /**
             * @description What the image file says of its pixels; null: nothing.
             * @default null
             */
            facts?: components["schemas"]["SpacingFactsRequest"] | null;
            /**
             * @description Counts before what the file says.
             * @default null
             */
            known?: components["schemas"]["KnownObjectRequest"] | null;
            /** @description The canals' lines. */
            lines: components["schemas"]["CanalLineRequest"][];
            /**
             * @description One standard deviation of a mark that does not tell its zoom; None: as the figures have it.
             * @default null
             */
            tapped_within_px?: number | null;
        };
        /** @description To which canal an image is moved. */
        ImageMoveGivenRequest: {
            /** @description Where it belongs; empty: the whole tooth. */
            canal: string;
        };
        /** @description An image was taken. No event waits for the image itself: it is uploaded separately. */
        ImagePayload: {
            /** @description Id of the image. */
            image_id: string;
            /**
             * @description Which kind it is: it tells the members of a choice apart. (enum property replaced by openapi-typescript)
             * @enum {string}
             */
            kind: "image";
            /** @description What the image was taken for. */
            purpose: components["schemas"]["ImagePurpose"];
        };
        /** @description An image was taken. No event waits for the image itself: it is uploaded separately. */
        ImagePayloadRequest: {
            /** @description Id of the image. */
            image_id: string;
            /**
             * @description Which kind it is: it tells the members of a choice apart. (enum property replaced by openapi-typescript)
             * @enum {string}
             */
            kind: "image";
            /**
             * @description What the image was taken for.
             * @default other
             */
            purpose?: components["schemas"]["ImagePurpose"];
        };
        /**
         * @description What an image was taken for.
         * @enum {string}
         */
        ImagePurpose: "pre_operative" | "length" | "final_size" | "cone" | "final" | "other";
        /** @description One correction of an image: it was struck, or put to another canal. Earlier ones stay. */
        ImagePutRight: {
            /**
             * Format: date-time
             * @description When it was.
             */
            at: string;
            /** @description Where it was; empty for the whole tooth. */
            canal: string;
            /** @description Id of the image. */
            image_id: string;
            /** @description Where it counts instead, empty for the whole tooth; None where it was struck and counts for nothing. */
            moved_to: string | null;
            /** @description What the image was taken for. */
            purpose: string;
            /**
             * Format: date-time
             * @description When it was taken.
             */
            taken_at: string;
            /** @description Who took it. */
            taken_by: components["schemas"]["RecordPerson"];
            /** @description The person's name. */
            who: components["schemas"]["RecordPerson"];
            /** @description Why. */
            why: components["schemas"]["StruckWhy"];
        };
        /** @description What may still be stored; asked before a camera opens. */
        ImageQuota: {
            /** @description Of the programme. */
            left_bytes: number;
            /** @description Bytes that all images of the case may have. */
            most_bytes: number;
            /** @description Bytes that one image may have. */
            most_bytes_each: number;
        };
        /** @description An image was removed; nothing of its picture is left. */
        ImageRemoval: {
            /**
             * Format: date-time
             * @description When it was.
             */
            at: string;
            /** @description Why. */
            reason: components["schemas"]["RemovalReason"];
            /** @description The person's name. */
            who: components["schemas"]["RecordPerson"];
        };
        /** @description What is told of an image beside the image. */
        ImageSentRequest: {
            /**
             * @description The canal by its name; empty or null for the whole tooth.
             * @default
             */
            canal?: string;
            /**
             * Format: date-time
             * @description When it was by the device's clock; it orders nothing.
             */
            device_time?: string;
            /**
             * Format: binary
             * @description JPEG, PNG, WebP, TIFF, DICOM, or HEIC where the server has the extra that reads it, found out by its content.
             */
            file: string;
            /**
             * @description What the image was taken for.
             * @default other
             */
            purpose?: components["schemas"]["ImagePurpose"];
        };
        /** @description A stored image; what has arrived of it and what its name check says are worked out when asked. */
        ImageShown: {
            /** @description Whether the file says that text is part of its pixels; null: it does not say. */
            burnt_in_text: components["schemas"]["BurntInText"];
            /** @description Where it counts now; empty: the whole tooth. */
            canal: string;
            /**
             * Format: date-time
             * @description When somebody looked whether it names a person; null: nobody did yet.
             */
            checked_at: string | null;
            /** @description Looked first, and found nobody named. */
            checked_by: components["schemas"]["PersonRef"] | null;
            /**
             * Format: date-time
             * @description When it was by the device's clock; it orders nothing.
             */
            device_time: string;
            /** @description A de-identified DICOM data set is there too. */
            has_data_set: boolean;
            /** @description Height in pixels. */
            height_px: number | null;
            /**
             * Format: uuid
             * @description Its own id.
             */
            id: string;
            /** @description What was sent, by its content; null until it was read. */
            readonly kind: components["schemas"]["ImageKind"] | null;
            /** @description `open`: somebody has to look whether a name or a number of a person is in the picture. */
            name_check: components["schemas"]["NameCheck"];
            /** @description What the image was taken for. */
            purpose: components["schemas"]["ImagePurpose"];
            /** @description Each time, the first first. */
            put_right: components["schemas"]["PutRightShown"][];
            /** @description Why it was refused; else empty. */
            reason: string;
            /** @description An upload goes on from here. */
            readonly received_bytes: number;
            /**
             * Format: date-time
             * @description When its pixels were removed; null: they are here.
             */
            removed_at: string | null;
            /** @description Who removed its pixels; null: they are here. */
            removed_by: components["schemas"]["PersonRef"] | null;
            /** @description Why it was removed; else null. */
            readonly removed_for: components["schemas"]["RemovalReason"] | null;
            /** @description Of the whole upload. */
            sent_bytes: number;
            /**
             * Format: date-time
             * @description When the server got it.
             */
            server_time: string;
            /** @description Of what was sent, in hexadecimal. */
            sha256: string;
            /** @description What the file said of its scale, as read. */
            readonly spacing: components["schemas"]["Spacing"] | null;
            /** @description How it is. */
            state: components["schemas"]["ImageState"];
            /** @description It counts for nothing. */
            struck: boolean;
            /** @description Who took it. */
            taken_by: components["schemas"]["PersonRef"];
            /** @description Width in pixels. */
            width_px: number | null;
        };
        /** @description The stored images of a case, with two values that hold for all of them. */
        ImagesShown: {
            /** @description The images. */
            images: components["schemas"]["ImageShown"][];
            /** @description How sure marks are: by these a phone says so with no connection. */
            marking: components["schemas"]["MarkFigures"];
            /** @description How much room there is for images. */
            quota: components["schemas"]["ImageQuota"];
        };
        /**
         * @description * `awaited`: Told of, and not here yet, or only in part.
         *     * `refused`: Could not be kept; the reason says why.
         *     * `removed`: Was here, or on its way, and somebody removed it: its files and the parts of its upload are deleted.
         * @enum {string}
         */
        ImageState: "awaited" | "stored" | "refused" | "removed";
        /** @description Why an image is struck. */
        ImageStrikeGivenRequest: {
            /** @description `not_so`: it does not show what it was taken for. */
            why: components["schemas"]["ImageStruckWhy"];
        };
        /**
         * @description Why an image was struck.
         * @enum {string}
         */
        ImageStruckWhy: "wrong_canal" | "not_so";
        /** @description The canal's widths from the orifice down to its end, and where they are from. */
        InitialShape: {
            /** @description How it is known. */
            know: string;
            /** @description The points, in order. */
            points: components["schemas"]["CanalWidth"][];
            /** @description Where it is from. */
            source: string;
        };
        /** @description An instrument was looked at. One that is found whole after a discard is a new one. */
        InspectedPayload: {
            /** @description What was found. */
            found: components["schemas"]["Inspection"];
            /** @description The instrument, by its key. */
            instrument: string;
            /**
             * @description Which kind it is: it tells the members of a choice apart. (enum property replaced by openapi-typescript)
             * @enum {string}
             */
            kind: "inspected";
            /** @description Why. */
            why: string;
        };
        /** @description An instrument was looked at. One that is found whole after a discard is a new one. */
        InspectedPayloadRequest: {
            /** @description What was found. */
            found: components["schemas"]["Inspection"];
            /** @description The instrument, by its key. */
            instrument: string;
            /**
             * @description Which kind it is: it tells the members of a choice apart. (enum property replaced by openapi-typescript)
             * @enum {string}
             */
            kind: "inspected";
            /**
             * @description Why.
             * @default
             */
            why?: string;
        };
        /**
         * @description What an instrument was found to be when it was looked at.
         * @enum {string}
         */
        Inspection: "whole" | "discarded";
        /** @description One instrument of a kit, as its maker and the programme describe it. */
        Instrument: {
            /**
             * cutting part
             * @description Length of the cutting part, in millimetres.
             */
            cutting_part_mm: number;
            /**
             * diameter
             * @description A variable taper: diameters from the tip upwards, in place of size and taper for the geometry.
             */
            diameters: components["schemas"]["DiameterAt"][];
            /**
             * largest flute
             * @description Largest diameter of the flutes; needed for steep tapers, whose flutes end before the cutting part does.
             */
            largest_flute_mm: number | null;
            /**
             * length
             * @description Operative length from tip to handle.
             */
            length_mm: number;
            /**
             * uses at most
             * @description As the maker's instructions or the programme allow.
             */
            most_uses: number | null;
            /**
             * motion
             * @description How the instrument is moved.
             */
            motion: components["schemas"]["Motion"];
            /**
             * size
             * @description Tip in hundredths of a millimetre (ISO 3630-1).
             */
            size: number;
            /**
             * speed
             * @description Turns per minute, from the maker's instructions; null: none.
             */
            speed_rpm: number | null;
            /**
             * taper
             * @description Hundredths of a millimetre per millimetre: 4 is written .04.
             */
            taper: number;
            /**
             * torque
             * @description Torque in N·cm, from the maker's instructions; null: none.
             */
            torque_ncm: number | null;
            /**
             * kept for
             * @description What the instrument is kept for.
             */
            use: components["schemas"]["Use"];
            /**
             * times used
             * @description Canals it has been used in.
             */
            uses: number;
        };
        /** @description How often an instrument was used; one use is one canal. */
        InstrumentCount: {
            /** @description Its key. */
            instrument: string;
            /** @description How many uses there may be; null: not limited. */
            most_uses: number | null;
            /** @description How often it was used. */
            uses: number;
        };
        /** @description An instrument as plans and screens name it. */
        InstrumentName: {
            /** @description ISO 3630-1 colour name; never the only sign. */
            colour: string | null;
            /** @description Which one it is, in a word that stays the same. */
            key: string;
            /** @description How the instrument is moved. */
            motion: string;
            /** @description Its name, for people. */
            name: string;
            /** @description Speed and torque as the programme typed them in, or that they are not stated. */
            setting_says: string;
            /** @description False for an engine instrument whose speed or torque is missing: it is not used before they are looked up. */
            setting_stated: boolean;
            /** @description Size by ISO 3630-1, in hundredths of a millimetre. */
            size: number;
            /** @description Taper, in hundredths. */
            taper: number;
        };
        /** @description One instrument of a kit, as its maker and the programme describe it. */
        InstrumentRequest: {
            /**
             * cutting part
             * @description Length of the cutting part, in millimetres.
             */
            cutting_part_mm: number;
            /**
             * diameter
             * @description A variable taper: diameters from the tip upwards, in place of size and taper for the geometry.
             * @default []
             */
            diameters?: components["schemas"]["DiameterAtRequest"][];
            /**
             * largest flute
             * @description Largest diameter of the flutes; needed for steep tapers, whose flutes end before the cutting part does.
             * @default null
             */
            largest_flute_mm?: number | null;
            /**
             * length
             * @description Operative length from tip to handle.
             */
            length_mm: number;
            /**
             * uses at most
             * @description As the maker's instructions or the programme allow.
             * @default null
             */
            most_uses?: number | null;
            /**
             * motion
             * @description How the instrument is moved.
             */
            motion: components["schemas"]["Motion"];
            /**
             * size
             * @description Tip in hundredths of a millimetre (ISO 3630-1).
             */
            size: number;
            /**
             * speed
             * @description Turns per minute, from the maker's instructions; null: none.
             * @default null
             */
            speed_rpm?: number | null;
            /**
             * taper
             * @description Hundredths of a millimetre per millimetre: 4 is written .04.
             */
            taper: number;
            /**
             * torque
             * @description Torque in N·cm, from the maker's instructions; null: none.
             * @default null
             */
            torque_ncm?: number | null;
            /**
             * kept for
             * @description What the instrument is kept for.
             */
            use: components["schemas"]["Use"];
            /**
             * times used
             * @description Canals it has been used in.
             * @default 0
             */
            uses?: number;
        };
        /** @description A size of the ISO 3630-1 series. */
        InstrumentSize: {
            /** @description Never the only sign: several sizes share each colour. */
            colour: string;
            /** @description Diameter 16 mm from the tip of an instrument of taper .02. */
            d16_mm: number;
            /** @description How it is known. */
            know: string;
            /** @description Tip in hundredths of a millimetre. */
            size: number;
            /** @description Where it is from. */
            source: string;
            /** @description Diameter at the tip, in millimetres. */
            tip_mm: number;
        };
        /** @description The instruments' sizes by ISO 3630-1. */
        InstrumentSizes: {
            /** @description Address of the next page; null: this is the last. */
            next: string | null;
            /** @description Address of the page before; null: this is the first. */
            previous: string | null;
            /** @description The rows of this page. */
            results: components["schemas"]["InstrumentSize"][];
        };
        /** @description What one instrument of the kit was used for in this case; one use is one canal. */
        InstrumentUsed: {
            /** @description In the order in which it entered them; a canal stands twice where a new one of its kind entered it again. */
            canals: string[];
            /** @description How many of its kind were discarded. */
            discarded: number;
            /** @description Size and taper. */
            instrument: string;
            /** @description Which one it is, in a word that stays the same. */
            key: string;
            /** @description How many uses the kit allows. */
            most_uses: number | null;
            /** @description How often the one that is there now was used: in this case, and before it as the plan counted. */
            uses: number;
        };
        /** @description One page of invitations. */
        InvitationPage: {
            /**
             * Format: uri
             * @description Address of the next page; null: this is the last.
             */
            next: string | null;
            /**
             * Format: uri
             * @description Address of the page before; null: this is the first.
             */
            previous: string | null;
            /** @description The rows of this page. */
            results: components["schemas"]["InvitationShown"][];
        };
        /** @description A stored invitation, as whoever has its link sees it. */
        InvitationSeen: {
            /**
             * Format: date-time
             * @description When it ends.
             */
            ends_at: string;
            /** @description What it is grouped by. */
            group: string;
            /** @description The user name that was given has an account: sign in with it first, then join. */
            readonly has_account: boolean;
            /** @description As others will see it; empty: to be chosen. */
            name: string;
            /** @description The programme. */
            programme: components["schemas"]["ProgrammeRef"];
            /** @description What the person is in the programme. */
            role: components["schemas"]["Role"];
            /** @description To sign in with; empty: to be chosen. */
            username: string;
        };
        /** @description Whom to invite. */
        InvitationsGivenRequest: {
            /**
             * @description The link ends after so many; 14 if nothing is said.
             * @default 14
             */
            days?: number;
            /** @description Each once. */
            people: components["schemas"]["InvitedGivenRequest"][];
        };
        /** @description A stored invitation; never its link. Once it was used its names are those of the person. */
        InvitationShown: {
            /**
             * Format: date-time
             * @description When it ends.
             */
            ends_at: string;
            /** @description What it is grouped by. */
            group: string;
            /**
             * Format: uuid
             * @description Its own id.
             */
            id: string;
            /**
             * Format: date-time
             * @description When it was made.
             */
            made_at: string;
            /** @description Null: whoever runs the server. */
            made_by: components["schemas"]["PersonRef"] | null;
            /** @description As others will see it; empty: the person chooses. */
            name: string;
            /** @description What the person is in the programme. */
            role: components["schemas"]["Role"];
            /** @description How it is. */
            state: components["schemas"]["InvitationState"];
            /**
             * Format: date-time
             * @description When somebody joined by it; null: nobody did.
             */
            used_at: string | null;
            /** @description Who joined by it. */
            used_by: components["schemas"]["PersonRef"] | null;
            /** @description To sign in with; empty: the person chooses, or has joined. */
            username: string;
        };
        /**
         * @description * `ended`: Nobody used it in time.
         * @enum {string}
         */
        InvitationState: "open" | "used" | "withdrawn" | "ended";
        /** @description What came of inviting: rows that were just stored, and who needed none. */
        InvitationsWithLinks: {
            /** @description Who belongs to the programme already, or has a link that still counts. */
            left_out: components["schemas"]["Invited"][];
            /** @description Invitations that were just made. */
            made: components["schemas"]["InvitationWithLink"][];
        };
        /** @description An invitation that was just stored, with its link, which is shown this once. */
        InvitationWithLink: {
            /** @description The invitation that it is about. */
            invitation: components["schemas"]["InvitationShown"];
            /** @description Hand it to this one person. What stands after the # reaches no log: it is never part of a request's address. Kept nowhere here. */
            readonly link: string;
        };
        /** @description Somebody who is invited. What is empty of name and user name, they choose themselves. */
        Invited: {
            /** @description What it is grouped by. */
            group: string;
            /** @description As it is shown to others. */
            name: string;
            /** @description What the person is in the programme. */
            role: components["schemas"]["Role"];
            /** @description The name to sign in with. */
            username: string;
        };
        /** @description Somebody to be invited, read by hand: each text has a limit. What is left out of the names they choose. */
        InvitedGivenRequest: {
            /** @description What it is grouped by. */
            group?: string;
            /** @description As others will see it. */
            name?: string;
            /** @description What the person is in the programme. */
            role: components["schemas"]["Role"];
            /** @description To sign in with. */
            username?: string;
        };
        /**
         * @description What a canal is rinsed with.
         * @enum {string}
         */
        Irrigant: "water" | "saline" | "sodium_hypochlorite" | "chlorhexidine" | "edta";
        /** @description How much of an irrigant the expected walk uses. */
        IrrigantTotal: {
            /** @description What the canal is rinsed with; null: nothing. */
            irrigant: string;
            /** @description Volume in millilitres; null: not told. */
            volume_ml: number;
        };
        /** @description How much of one irrigant was used. What was recorded out of course counts too, what was taken back does not. */
        IrrigantUsed: {
            /** @description The canals, each once. */
            canals: components["schemas"]["CanalVolume"][];
            /** @description What the canal is rinsed with; null: nothing. */
            irrigant: string;
            /** @description Volume in millilitres; null: not told. */
            volume_ml: number;
        };
        /** @description The canal was irrigated once more than the order of work asks for. */
        IrrigatedPayloadKept: {
            /** @description Seconds that the irrigant stayed; null: not known. */
            contact_s: number | null;
            /** @description What the canal is rinsed with; null: nothing. */
            irrigant: string;
            /**
             * @description Which kind it is: it tells the members of a choice apart. (enum property replaced by openapi-typescript)
             * @enum {string}
             */
            kind: "irrigated";
            /** @description Volume in millilitres; null: not told. */
            volume_ml: number;
        };
        /** @description The canal was irrigated once more than the order of work asks for. */
        IrrigatedPayloadRequestKept: {
            /**
             * @description Seconds that the irrigant stayed; null: not known.
             * @default null
             */
            contact_s?: number | null;
            /** @description What the canal is rinsed with; null: nothing. */
            irrigant: string;
            /**
             * @description Which kind it is: it tells the members of a choice apart. (enum property replaced by openapi-typescript)
             * @enum {string}
             */
            kind: "irrigated";
            /** @description Volume in millilitres; null: not told. */
            volume_ml: number;
        };
        /** @description A recorded depth, and the band that it was expected in just before it was recorded. */
        Judged: {
            /** @description The canal is bent, and the estimate knows nothing of it. */
            as_if_straight: boolean;
            /** @description How deep the tip went, in millimetres from the reference point. */
            depth_mm: number;
            /** @description The depth that was felt, against what was expected. */
            felt: components["schemas"]["Against"];
            /** @description Upper end, in millimetres. */
            high_mm: number;
            /** @description Lower end, in millimetres. */
            low_mm: number;
            /** @description The step, by its id in the run sheet. */
            node: string;
            /** @description Which time the step is worked, from 1. */
            pass_number: number;
        };
        /** @description Where a joining canal meets the main one, measured once. */
        Junction: {
            /**
             * measured at a length of
             * @description The joining canal's length when it was measured; a later change of length does not move the junction.
             */
            at_length_mm: number | null;
            /**
             * from the common end
             * @description Distance from the common terminus.
             */
            from_terminus_mm: number;
            /**
             * method
             * @description How it was measured: an estimate from an image opens no step.
             */
            method: components["schemas"]["JunctionMethod"];
        };
        /** @description A junction that was measured. */
        JunctionGivenRequest: {
            /**
             * Format: uuid
             * @description Made by the sender, so that sending again is harmless.
             */
            id?: string;
            /** @description Where the canal meets the main one; null: not measured. */
            junction: components["schemas"]["JunctionRequest"];
        };
        /**
         * @description How the place where two canals meet was found.
         * @enum {string}
         */
        JunctionMethod: "cone_mark" | "two_instruments" | "image_estimate";
        /** @description Where a joining canal meets the main one, measured once. */
        JunctionRequest: {
            /**
             * measured at a length of
             * @description The joining canal's length when it was measured; a later change of length does not move the junction.
             * @default null
             */
            at_length_mm?: number | null;
            /**
             * from the common end
             * @description Distance from the common terminus.
             */
            from_terminus_mm: number;
            /**
             * method
             * @description How it was measured: an estimate from an image opens no step.
             */
            method: components["schemas"]["JunctionMethod"];
        };
        /** @description A stored junction: its value, and who measured it when. */
        JunctionShown: {
            /** @description Who did it. */
            actor: components["schemas"]["PersonRef"];
            /**
             * Format: date-time
             * @description When it was.
             */
            at: string;
            /**
             * Format: uuid
             * @description Its own id.
             */
            id: string;
            /** @description Where the canal meets the main one; null: not measured. */
            junction: components["schemas"]["Junction"];
            /** @description Counts from 1. */
            number: number;
            /** @description Who struck it, when and why; null where it counts. */
            readonly struck: components["schemas"]["StruckShown"] | null;
        };
        /** @description A key to be made. */
        KeyGivenRequest: {
            /** @description It ends after so many. */
            days: number;
            /** @description What it is for; of a service's key the service's name. */
            name: string;
            /** @description Of the person who is signed in. */
            password: string;
            /** @description What the key opens. */
            scopes: components["schemas"]["Scope"][];
        };
        /** @description Keys, without their secrets. */
        KeyList: {
            /** @description Address of the next page; null: this is the last. */
            readonly next: string | null;
            /** @description Address of the page before; null: this is the first. */
            readonly previous: string | null;
            /** @description The rows of this page. */
            results: components["schemas"]["KeyShown"][];
        };
        /** @description A stored programme, as much of it as finding the rest needs. */
        KeyProgramme: {
            /**
             * Format: uuid
             * @description Its own id.
             */
            id: string;
            /** @description Its name, for people. */
            name: string;
        };
        /** @description A stored key; never its secret. */
        KeyShown: {
            /**
             * Format: date-time
             * @description When it ends.
             */
            ends_at: string;
            /**
             * Format: uuid
             * @description The text of the key holds it.
             */
            id: string;
            /**
             * Format: date-time
             * @description To the minute; null: never.
             */
            last_used_at: string | null;
            /**
             * Format: date-time
             * @description When it was made.
             */
            made_at: string;
            /** @description Who made it. */
            made_by: components["schemas"]["PersonRef"];
            /** @description Of the service, or as its owner named it. */
            name: string;
            /** @description What the key opens. */
            scopes: components["schemas"]["Scope"][];
        };
        /** @description A key that was just stored, with its text, which is shown this once. */
        KeyWithText: {
            /** @description Which one it is, in a word that stays the same. */
            key: components["schemas"]["KeyShown"];
            /** @description Sent as `Authorization: Bearer <text>`. Kept nowhere here. */
            text: string;
        };
        /** @description Instruments, needles and what canals are filled with. */
        Kit: {
            /**
             * cones, pluggers and spreaders
             * @description Cones, pluggers and spreaders.
             */
            filling: components["schemas"]["FillingItem"][];
            /**
             * instrument of the kit
             * @description The instruments.
             */
            instruments: components["schemas"]["Instrument"][];
            /**
             * kit
             * @description Its name, for people.
             */
            name: string;
            /**
             * needle of the kit
             * @description The irrigation needles.
             */
            needles: components["schemas"]["Needle"][];
        };
        /** @description A kit to be added to a programme. */
        KitGivenRequest: {
            /**
             * Format: uuid
             * @description Made by the sender, so that sending again is harmless.
             */
            id?: string;
            /** @description The kit. */
            kit: components["schemas"]["KitRequest"];
        };
        /** @description The kits of a programme. */
        KitList: {
            /** @description Address of the next page; null: this is the last. */
            readonly next: string | null;
            /** @description Address of the page before; null: this is the first. */
            readonly previous: string | null;
            /** @description The rows of this page. */
            results: components["schemas"]["KitShown"][];
        };
        /** @description Instruments, needles and what canals are filled with. */
        KitRequest: {
            /**
             * cones, pluggers and spreaders
             * @description Cones, pluggers and spreaders.
             * @default []
             */
            filling?: components["schemas"]["FillingItemRequest"][];
            /**
             * instrument of the kit
             * @description The instruments.
             */
            instruments: components["schemas"]["InstrumentRequest"][];
            /**
             * kit
             * @description Its name, for people.
             */
            name: string;
            /**
             * needle of the kit
             * @description The irrigation needles.
             */
            needles: components["schemas"]["NeedleRequest"][];
        };
        /** @description A stored kit: its value, and how often the person who asks has used what is in it. */
        KitShown: {
            /** @description For services: the key that yours knows it by; null for people, and where there is none. */
            external_id: string | null;
            /**
             * Format: uuid
             * @description Its own id.
             */
            id: string;
            /** @description The kit. */
            kit: components["schemas"]["Kit"];
            /** @description Uses of the set you work with: as stated, and canals entered since. */
            yours: components["schemas"]["InstrumentCount"][];
        };
        /** @description A case as another system knows it. */
        KnownCaseGivenRequest: {
            /** @description Somebody looked: what was refused as `alias-looks-like-a-name` is none. */
            alias_is_no_name?: boolean;
            /** @description Whether the tooth is as most of its kind are. */
            anatomy?: components["schemas"]["Anatomy"];
            /** @description All that a person recorded as difficult: codes of `difficulty-factors`, each a factor, a colon and a level. */
            factors?: string[];
            /** @description Dam in place and tight: in the clinic nothing opens without it. */
            isolated?: boolean;
            /** @description An alias. A real identity has no place here. */
            patient_alias: string;
            /** @description A perforation is suspected. */
            perforation?: boolean;
            /** @description The tooth has a root filling already. */
            root_filled?: boolean;
            /** @description Training block, extracted tooth or clinic. */
            setting: components["schemas"]["Setting"];
            /**
             * Format: uuid
             * @description Whose case it is; it stays theirs.
             */
            student_id: string;
            /**
             * Format: uuid
             * @description Who supervises; null: nobody yet.
             */
            supervisor_id?: string | null;
            /** @description It stays this one. */
            tooth: components["schemas"]["ToothNameRequest"];
        };
        /** @description Something of known length on the image. */
        KnownObject: {
            /** @description An instrument from its stop to its tip; a ruler between two lines; a ball across. */
            length_mm: number;
            /** @description Marks along it, both ends at least: an instrument in a bent canal is bent. */
            points: components["schemas"]["Pixel"][];
            /** @description Which thing it is about. */
            what: components["schemas"]["KnownObjectKind"];
        };
        /**
         * @description An instrument, its stop to its tip; a ruler; a ball, across.
         * @enum {string}
         */
        KnownObjectKind: "instrument" | "ruler" | "ball";
        /** @description Something of known length on the image. */
        KnownObjectRequest: {
            /** @description An instrument from its stop to its tip; a ruler between two lines; a ball across. */
            length_mm: number;
            /** @description Marks along it, both ends at least: an instrument in a bent canal is bent. */
            points: components["schemas"]["PixelRequest"][];
            /** @description Which thing it is about. */
            what: components["schemas"]["KnownObjectKind"];
        };
        /**
         * @description * `length`: No length was taken: the plan rests on an estimate, or on nothing.
         *     * `image`: An image step was left with neither an image nor a reason why there is none.
         * @enum {string}
         */
        Lacking: "length" | "image";
        /** @description The working length of one canal and what it rests on. */
        Length: {
            /** @description Largest difference between readings that should agree. */
            apart_mm: number | null;
            /** @description The estimated stop from the pre-operative image, for the first instrument. */
            estimate_mm: number | null;
            /** @description Measured and estimated, the tooth may lie so far apart without a question; None: as the row has it. */
            estimate_within_mm: number | null;
            /** @description Between which lengths the tooth was estimated to lie; None where no estimate has an interval. */
            estimated: components["schemas"]["ImageInterval"] | null;
            /** @description How far the tooth as measured and as estimated lie apart; None where one of them is missing. */
            from_estimate_mm: number | null;
            /** @description The readings. */
            readings: components["schemas"]["ReadingResult"][];
            /** @description Methods the length comes from. */
            rests_on: string[];
            /** @description How it is. */
            state: components["schemas"]["LengthState"];
            /** @description Rounded down to half a millimetre. */
            stop_mm: number | null;
            /** @description What makes it better; empty: nothing. */
            what_to_do: string;
            /** @description Before rounding. */
            working_length_mm: number | null;
        };
        /** @description A published length of a tooth or a root. */
        LengthReference: {
            /** @description What low and high are: least and greatest, or one standard deviation. */
            band: string;
            /** @description Upper end, in millimetres. */
            high_mm: number | null;
            /** @description How it is known. */
            know: string;
            /** @description Lower end, in millimetres. */
            low_mm: number | null;
            /** @description Mean, in millimetres. */
            mean_mm: number;
            /** @description Which of two published sets of lengths it is from. */
            reference_set: components["schemas"]["ReferenceSet"];
            /** @description None: the whole tooth. */
            root: string | null;
            /** @description Where it is from. */
            source: string;
        };
        /** @description The readings of one canal. */
        LengthRequest: {
            /**
             * @description Width of the apical opening where it was seen to be wide.
             * @default null
             */
            apex_mm?: number | null;
            /** @description The canal by its name; empty or null for the whole tooth. */
            canal: string;
            /** @description The readings. */
            readings: (components["schemas"]["PreOperativeImageRequest"] | components["schemas"]["RatioRequest"] | components["schemas"]["ConfirmingImageRequest"] | components["schemas"]["ApexLocatorRequest"] | components["schemas"]["DirectSightRequest"])[];
            /** @description Readings from another point are listed and do not count. */
            reference_point: string;
            /**
             * @description What the image shows of resorption at the root's end.
             * @default none
             */
            resorption?: components["schemas"]["Resorption"];
            /** @description Training block, extracted tooth or clinic. */
            setting: components["schemas"]["Setting"];
            /**
             * @description The programme's own values in place of figures of the data tables, by key.
             * @default {}
             */
            thresholds?: {
                [key: string]: number;
            };
        };
        /**
         * @description * `missing`: No reading that counts.
         *     * `estimated`: Only estimates: good for exploring, not for shaping.
         *     * `to_settle`: Readings differ by little: the supervisor settles it at the hold point.
         *     * `unsettled`: Readings disagree, or a further image is due: nothing that shapes may go in.
         * @enum {string}
         */
        LengthState: "missing" | "estimated" | "settled" | "to_settle" | "unsettled";
        /**
         * @description How difficult it is.
         * @enum {string}
         */
        Level: "low" | "moderate" | "high";
        /** @description What is wrong in a line, and where. */
        LineFault: {
            /** @description As the first line names it. */
            column: components["schemas"]["ListColumn"];
            /** @description With what to do about it. */
            says: string;
        };
        /** @description What one line on an image measures. */
        LineMeasured: {
            /** @description None: where the canal leaves its axis was not marked. */
            bend: components["schemas"]["MeasuredBend"] | null;
            /** @description The canal by its name; empty or null for the whole tooth. */
            canal: string;
            /** @description Marks to be looked at once more. */
            doubts: components["schemas"]["Doubt"][];
            /** @description The same in widths of a pixel: for ratios. */
            length_columns: number;
            /** @description Along the curve from the reference point to the end; None without a scale. */
            length_mm: components["schemas"]["Between"] | null;
            /** @description From the reference point to the orifice; None without a scale or without that mark. */
            orifice_mm: number | null;
            /** @description Where the wanted distances lie; None beyond the line's end, or without a scale. */
            places: (components["schemas"]["Pixel"] | null)[];
            /** @description What this is as a reading of the canal; None without a scale or a reference point. */
            reading: (components["schemas"]["PreOperativeImage"] | components["schemas"]["Ratio"] | components["schemas"]["ConfirmingImage"] | components["schemas"]["ApexLocator"] | components["schemas"]["DirectSight"]) | null;
            /** @description How much deeper the tip lies than the stop that was set says; below 0 less deep. None without both. */
            tip_deeper_mm: components["schemas"]["Between"] | null;
            /** @description From the tip to the root's end; below 0 the tip is past it. */
            tip_short_mm: components["schemas"]["Between"] | null;
        };
        /**
         * @description What would come of one line of a list.
         *     * `new`: They would be invited.
         *     * `invited`: They have a link that counts.
         *     * `member`: They belong to the programme.
         * @enum {string}
         */
        LineState: "new" | "invited" | "member" | "wrong";
        /** @description A link by which somebody joins. */
        LinkGivenRequest: {
            /** @description What stands after the # of the link. */
            invitation: string;
        };
        /**
         * @description As the first line names it, whatever the order.
         * @enum {string}
         */
        ListColumn: "name" | "user name" | "role" | "group";
        /** @description One line of a list of people. */
        ListedLine: {
            /** @description What is wrong, each with where. */
            faults: components["schemas"]["LineFault"][];
            /** @description In the file, counted from 1. */
            line: number;
            /** @description Null where something is wrong. */
            person: components["schemas"]["Invited"] | null;
            /** @description How it is. */
            state: components["schemas"]["LineState"];
        };
        /**
         * @description The mark on the apex locator's scale that was read at.
         * @enum {string}
         */
        LocatorMark: "apex" | "constriction";
        /**
         * @description * `root`: A further root with its own canal.
         *     * `form`: A form of the whole canal system, charted and not planned.
         * @enum {string}
         */
        LookForKind: "canal" | "root" | "form";
        /** @description Which canal of a root is proposed to go to the common terminus where two join; a person decides. */
        MainCanal: {
            /** @description The canal by its name; empty or null for the whole tooth. */
            canal: string;
            /** @description How it is known. */
            know: string;
            /** @description Why. */
            reason: string;
            /** @description The root, by its name. */
            root: string;
            /** @description Where it is from. */
            source: string;
        };
        /** @description How far off marks and known objects are, and the bounds of what an image or an object can be. */
        MarkFigures: {
            /** @description One standard deviation of a ball's size, in millimetres. */
            ball_spread_mm: number;
            /** @description One standard deviation of a known object's length, by what it is. */
            instrument_spread_mm: number;
            /** @description Share of cases in which an interval holds the true value. */
            interval_share: number;
            /** @description No canal is longer. */
            length_most_mm: number;
            /** @description The shortest known object, in millimetres. */
            object_least_mm: number;
            /** @description The longest known object, in millimetres. */
            object_most_mm: number;
            /** @description By how much of its length the marks of a known object may be off. */
            object_off_share: number;
            /** @description The smallest pixel, in millimetres. */
            pixel_least_mm: number;
            /** @description The largest pixel, in millimetres. */
            pixel_most_mm: number;
            /** @description One standard deviation of a place within a pixel, however large the image is shown. */
            pixel_spread_px: number;
            /** @description Standard deviations from the middle of such an interval to its end. */
            reach: number;
            /** @description One standard deviation of a ruler's length, in millimetres. */
            ruler_spread_mm: number;
            /** @description Marks that were set on an image shown smaller than this are asked for again. */
            screen_px_per_mm_least: number;
            /** @description One standard deviation of a finger on the screen; a mark that tells its zoom is off by this over the zoom. */
            screen_spread_px: number;
            /** @description One standard deviation, along each axis, of a mark that does not tell its zoom. */
            tapped_px: number;
            /** @description A mark at which the line turns more sharply than this is asked about. */
            turn_deg: number;
        };
        /** @description Marks on one image, and which canals take their reading from them. */
        MarkingGivenRequest: {
            /**
             * Format: uuid
             * @description The marking that this one puts right.
             */
            corrects_id?: string | null;
            /** @description Without `facts`: what the file says of its scale is the image's own. */
            marks: components["schemas"]["ImageMarksRequest"];
            /**
             * @description A remark, or empty.
             * @default
             */
            note?: string;
            /** @description Canals whose length becomes a reading, and whose bend is charted. */
            take?: string[];
        };
        /** @description A stored marking: the marks, what they measure, who set them when. */
        MarkingShown: {
            /**
             * Format: date-time
             * @description When it was.
             */
            at: string;
            /**
             * Format: uuid
             * @description Id of the marking that this one corrects; null: none.
             */
            corrects_id: string | null;
            /**
             * Format: uuid
             * @description Its own id.
             */
            id: string;
            /** @description Who made it. */
            made_by: components["schemas"]["PersonRef"];
            /** @description What was marked on the image. */
            marks: components["schemas"]["ImageMarks"];
            /** @description What the marks measure. */
            measured: components["schemas"]["Measured"];
            /** @description A remark, or empty. */
            note: string;
            /** @description Counts from 1. */
            number: number;
            /** @description Canals whose length was taken from it. */
            readings: string[];
        };
        /** @description The stored markings of an image, and the scale of its file. */
        MarkingsShown: {
            /** @description The markings, the last first. */
            markings: components["schemas"]["MarkingShown"][];
            /** @description What the file alone gives. */
            scale: components["schemas"]["Scale"];
        };
        /** @description What the marks on one image measure. */
        Measured: {
            /** @description The canals' lines. */
            lines: components["schemas"]["LineMeasured"][];
            /** @description How large a pixel is, and what that rests on. */
            scale: components["schemas"]["Scale"];
            /** @description What the intervals rest on: the zoom at every touch, or what was assumed; empty in older measurements. */
            touch_says: string;
        };
        /** @description How the canal bends on this image. Of a double bend radius, arc and middle are those of the tightest. */
        MeasuredBend: {
            /** @description Between the tangents at both ends of the arc. */
            arc_deg: number | null;
            /** @description Length of the arc, in millimetres. */
            arc_mm: number | null;
            /** @description From the reference point to where the canal leaves its axis, along it. */
            begins_mm: number | null;
            /** @description Each of a double bend, from the orifice on; empty for any other. */
            bends: components["schemas"]["OneBend"][];
            /** @description What is wrong with it and what to do; empty for a single bend. */
            caution: string;
            /** @description What each published scheme calls Schneider's angle. */
            classes: components["schemas"]["CurveClass"][];
            /** @description From the canal's end to the middle of its bend, along it. */
            middle_from_end_mm: number | null;
            /** @description None: straight, no scale, or the marks do not tell one bend from the other. */
            radius_mm: components["schemas"]["Between"] | null;
            /** @description Schneider's angle, in degrees, with its interval. */
            schneider_deg: components["schemas"]["Between"];
            /** @description Whether the canal bends to one side, to both, or it cannot be told. */
            shape: components["schemas"]["BendShape"];
        };
        /** @description Marks on one image, in pixels, with what is known of its scale. */
        MeasureRequest: {
            /** @description What was marked on the image. */
            marks: components["schemas"]["ImageMarksRequest"];
            /**
             * @description The programme's own values in place of figures of the data tables, by key.
             * @default {}
             */
            thresholds?: {
                [key: string]: number;
            };
        };
        /** @description A stored membership of the person who asks. */
        MembershipShown: {
            /** @description What it is grouped by. */
            group: string;
            /** @description The programme. */
            programme: components["schemas"]["ProgrammeRef"];
            /** @description What the person is in the programme. */
            role: components["schemas"]["Role"];
            /**
             * Format: date
             * @description Of a student: the last day on which they may treat patients; null: they may not.
             */
            treats_patients_until: string | null;
        };
        /** @description A stored membership of the programme, with its person. */
        MemberShown: {
            /** @description For services: the key that yours knows it by; null for people, and where there is none. */
            external_id: string | null;
            /** @description What it is grouped by. */
            group: string;
            /**
             * Format: date-time
             * @description When they joined the programme.
             */
            joined_at: string;
            /** @description The person. */
            person: components["schemas"]["PersonRef"];
            /** @description What the person is in the programme. */
            role: components["schemas"]["Role"];
            /**
             * Format: date
             * @description Of a student: the last day on which they may treat patients; null: they may not.
             */
            treats_patients_until: string | null;
        };
        /**
         * @description How an instrument is moved.
         * @enum {string}
         */
        Motion: "hand" | "continuous" | "reciprocating";
        /**
         * @description Whether a person has to look for a name or a number of somebody written in the picture.
         *     * `not_asked`: The file denies it, or there is no picture.
         *     * `nobody_named`: A person looked and found none.
         * @enum {string}
         */
        NameCheck: "not_asked" | "open" | "nobody_named";
        /** @description A caution by its name; no canal: of the whole tooth. */
        Named: {
            /** @description The canal by its name; empty or null for the whole tooth. */
            canal: string | null;
            /** @description Which one it is, in a word that stays the same. */
            code: string;
        };
        /** @description A caution by its name; no canal: of the whole tooth. */
        NamedRequest: {
            /**
             * @description The canal by its name; empty or null for the whole tooth.
             * @default null
             */
            canal?: string | null;
            /** @description Which one it is, in a word that stays the same. */
            code: string;
        };
        /** @description An irrigation needle. */
        Needle: {
            /**
             * gauge
             * @description Gauge of the needle.
             */
            gauge: number;
            /**
             * tip
             * @description Where the needle's opening is.
             */
            tip: components["schemas"]["NeedleTip"];
        };
        /** @description How deep the irrigation needle goes in one canal. */
        NeedleDepth: {
            /** @description How deep it may go by how wide the canal is before this order of work; None in older plans. */
            begins_mm: number | null;
            /** @description Never deeper, however wide the canal. */
            ceiling_mm: number;
            /** @description The first step after which the needle gets to its ceiling. */
            first_at_ceiling: string | null;
            /** @description How deep it may go after what has been to length so far. */
            now: components["schemas"]["NeedleNow"][];
            /** @description What to do where the needle is free nowhere below the orifice; otherwise empty. */
            says: string;
        };
        /** @description How deep the needle may go once the instrument `after` has been at length. */
        NeedleNow: {
            /** @description What it is afterwards; null: nothing. */
            after: string;
            /** @description Never deeper, in millimetres from the reference point. */
            at_most_mm: number;
        };
        /** @description An irrigation needle. */
        NeedleRequest: {
            /**
             * gauge
             * @description Gauge of the needle.
             */
            gauge: number;
            /**
             * tip
             * @description Where the needle's opening is.
             */
            tip: components["schemas"]["NeedleTip"];
        };
        /**
         * @description Where the needle's opening is.
         * @enum {string}
         */
        NeedleTip: "open" | "side_vented";
        /** @description A new account, and the link by which it joins. */
        NewAccountGivenRequest: {
            /** @description What stands after the # of the link. */
            invitation: string;
            /**
             * @description Where none was given.
             * @default
             */
            name?: string;
            /** @description Twelve letters at least. */
            password: string;
            /**
             * @description Where none was given.
             * @default
             */
            username?: string;
        };
        /**
         * @description Why a receiver gave no answer at all.
         *     * `inside`: The address is of a network that webhooks do not go to: private, of this machine, of one line.
         *     * `not_trusted`: Its certificate is not of the name, has ended, or nobody known vouches for it.
         * @enum {string}
         */
        NoAnswer: "inside" | "not_reached" | "not_trusted" | "too_slow";
        /**
         * @description Why there is no image.
         * @enum {string}
         */
        NoImage: "no_sensor" | "film" | "image_elsewhere";
        /**
         * @description * `iso_3950`: Two digits, quadrant and position: 26.
         *     * `universal`: 1 to 32, A to T for primary teeth: 14.
         *     * `palmer`: Quadrant and position, typed or with the corner: UL6, ⎿6.
         * @enum {string}
         */
        Notation: "iso_3950" | "universal" | "palmer";
        /** @description A note. */
        NotePayload: {
            /**
             * @description Which kind it is: it tells the members of a choice apart. (enum property replaced by openapi-typescript)
             * @enum {string}
             */
            kind: "note";
            /** @description The text. */
            text: string;
        };
        /** @description A note. */
        NotePayloadRequest: {
            /**
             * @description Which kind it is: it tells the members of a choice apart. (enum property replaced by openapi-typescript)
             * @enum {string}
             */
            kind: "note";
            /** @description The text. */
            text: string;
        };
        /** @description A canal that a supervisor's decision leaves out. */
        NotReleased: {
            /** @description The canal by its name; empty or null for the whole tooth. */
            canal: string;
            /** @description The returned canal that it joins with; empty where it was returned itself. */
            joins: string;
            /** @description Why; empty where only its partner was returned. */
            remark: string;
        };
        /** @description A canal that a supervisor's decision leaves out. */
        NotReleasedRequest: {
            /** @description The canal by its name; empty or null for the whole tooth. */
            canal: string;
            /**
             * @description The returned canal that it joins with; empty where it was returned itself.
             * @default
             */
            joins?: string;
            /** @description Why; empty where only its partner was returned. */
            remark: string;
        };
        /** @description How the canal is filled. */
        Obturation: {
            /** @description Name of the proposed cone: the one of the kit that rests at the end within tolerance; none where none does. */
            master_cone: string | null;
            /** @description Where cones, pluggers and spreaders come to rest. */
            rests: components["schemas"]["Rest"][];
            /** @description How much the canal holds. */
            volumes: components["schemas"]["Volumes"];
        };
        /** @description One of the bends of a canal that bends to both sides. */
        OneBend: {
            /** @description Between the tangents at both ends of the arc, in degrees. */
            arc_deg: number;
            /** @description Length of the arc, in millimetres. */
            arc_mm: number;
            /** @description From the canal's end to the middle of its bend, in millimetres. */
            middle_from_end_mm: number;
            /** @description Radius, in millimetres. */
            radius_mm: components["schemas"]["Between"];
            /** @description From the way the canal runs where this bend begins to where it ends: half the arc's. */
            schneider_deg: number;
        };
        /** @description Where a supervisor's codes stand. */
        OneTimeCodeShown: {
            /** @description Since when it counts. */
            since: string | null;
            /** @description How it is. */
            state: components["schemas"]["OneTimeCodeState"];
        };
        /**
         * @description * `to_confirm`: Made, and no code of it was typed in yet.
         * @enum {string}
         */
        OneTimeCodeState: "none" | "to_confirm" | "counts";
        /** @description The licensed clinician who is in the room for this visit. */
        OnSitePayload: {
            /**
             * @description Which kind it is: it tells the members of a choice apart. (enum property replaced by openapi-typescript)
             * @enum {string}
             */
            kind: "on_site";
            /** @description Id of the supervisor. */
            supervisor_id: string;
        };
        /** @description The licensed clinician who is in the room for this visit. */
        OnSitePayloadRequest: {
            /**
             * @description Which kind it is: it tells the members of a choice apart. (enum property replaced by openapi-typescript)
             * @enum {string}
             */
            kind: "on_site";
            /** @description Id of the supervisor. */
            supervisor_id: string;
        };
        /** @description A sign-off that a supervisor gives on a student's phone, by a code. */
        OnSiteSignOffGivenRequest: {
            /** @description Other canals that wait, each with its hold point and its answer: one code serves all. */
            also?: components["schemas"]["CanalSignOffRequest"][];
            /** @description Empty for a sign-off of the visit. */
            canal?: string;
            /** @description Which one it is, in a word that stays the same. */
            code: string;
            /** @description Approved although what is asked for is not there. */
            despite_missing?: boolean;
            /** @description How the step was left. */
            exit: components["schemas"]["SignOffExit"];
            /** @description The hold point in the run sheet, or `visit/check`, `visit/renew`. */
            node: string;
            /** @description Of the plan on the screen. */
            plan_hash: string;
            /** @description Why. */
            reason?: string;
            /**
             * Format: uuid
             * @description Who types the code.
             */
            supervisor_id: string;
        };
        /**
         * @description What the walk through a canal's run sheet comes to.
         * @enum {string}
         */
        Outcome: "finished" | "plan_again";
        /** @description A depth beyond where it would still have been expected, and the band that it was expected in. */
        OutOfBand: {
            /** @description The canal is bent, and the estimate knows nothing of it. */
            as_if_straight: boolean;
            /** @description How deep the tip went, in whole micrometres from the reference point. */
            depth_um: number;
            /** @description Upper end, in whole micrometres. */
            high_um: number;
            /** @description Lower end, in whole micrometres. */
            low_um: number;
        };
        /**
         * @description Why one event moves nothing; it is kept and shown all the same.
         *     * `revoked`: The approval of the plan had been withdrawn.
         *     * `not_checked`: What it says could not be checked.
         *     * `not_working`: The supervisor who told it had taken over, and that has ended.
         * @enum {string}
         */
        OutOfCourse: "other_plan" | "no_canal" | "closed" | "halted" | "dam_off" | "nobody_on_site" | "approval_lapsed" | "revoked" | "withheld" | "other_step" | "no_such_exit" | "nothing_asked" | "not_to_undo" | "not_checked" | "not_working";
        /** @description A supervisor lets the work go on in spite of a caution. */
        Override: {
            /**
             * canal
             * @description None for a caution that concerns the whole tooth.
             */
            canal: string | null;
            /**
             * caution
             * @description Which one it is, in a word that stays the same.
             */
            code: string;
            /**
             * final size chosen by a supervisor
             * @description The size that the supervisor chose for a wide canal; none lets the student's own pass.
             */
            final_size: number | null;
            /**
             * reason
             * @description Why.
             */
            reason: string;
        };
        /** @description What a supervisor lets pass, and why. */
        OverrideGivenRequest: {
            /** @description Null: of the whole tooth. */
            canal?: string | null;
            /** @description Code of a caution of the version that stands. */
            code: string;
            /** @description With `wide-canal` alone: the size chosen. */
            final_size?: number | null;
            /**
             * Format: uuid
             * @description Made by the sender, so that sending again is harmless.
             */
            id?: string;
            /** @description Why the work may go on; shown with the caution. */
            reason: string;
        };
        /** @description What supervisors let pass in a case. */
        OverrideList: {
            /** @description Address of the next page; null: this is the last. */
            readonly next: string | null;
            /** @description Address of the page before; null: this is the first. */
            readonly previous: string | null;
            /** @description The rows of this page. */
            results: components["schemas"]["OverrideShown"][];
        };
        /** @description What a supervisor let pass; taking it back is added, not erased. */
        OverrideRecord: {
            /**
             * Format: date-time
             * @description When it was.
             */
            at: string;
            /** @description The canal by its name; empty or null for the whole tooth. */
            canal: string | null;
            /** @description Which one it is, in a word that stays the same. */
            code: string;
            /** @description What the supervisor chose for a wide canal. */
            final_size: number | null;
            /** @description Why. */
            reason: string;
            /** @description The person's name. */
            who: components["schemas"]["RecordPerson"];
            /** @description When it was withdrawn; null: it holds. */
            withdrawn_at: string | null;
            /** @description Who withdrew it; null: it holds. */
            withdrawn_by: components["schemas"]["RecordPerson"] | null;
        };
        /** @description A supervisor lets the work go on in spite of a caution. */
        OverrideRequest: {
            /**
             * canal
             * @description None for a caution that concerns the whole tooth.
             */
            canal: string | null;
            /**
             * caution
             * @description Which one it is, in a word that stays the same.
             */
            code: string;
            /**
             * final size chosen by a supervisor
             * @description The size that the supervisor chose for a wide canal; none lets the student's own pass.
             * @default null
             */
            final_size?: number | null;
            /**
             * reason
             * @description Why.
             */
            reason: string;
        };
        /** @description A stored override: who gave it and who withdrew it, and the canal by its name. */
        OverrideShown: {
            /**
             * Format: date-time
             * @description When it was.
             */
            at: string;
            /** @description The canal by its name; empty or null for the whole tooth. */
            canal?: string | null;
            /** @description Which one it is, in a word that stays the same. */
            code: string;
            /** @description What was chosen for a wide canal. */
            final_size: number | null;
            /**
             * Format: uuid
             * @description Its own id.
             */
            id: string;
            /** @description Why. */
            reason: string;
            /** @description The supervisor; null: nobody yet. */
            supervisor: components["schemas"]["PersonRef"];
            /**
             * Format: date-time
             * @description When it was withdrawn; null: it holds.
             */
            withdrawn_at: string | null;
            /** @description Who withdrew it; null: it holds. */
            withdrawn_by: components["schemas"]["PersonRef"] | null;
        };
        /** @description The stored key or token that the request came with, whom it acts for, and where: rows of several tables. */
        OwnKeyShown: {
            /**
             * Format: date-time
             * @description When it ends.
             */
            ends_at: string;
            /** @description Its name, for people. */
            name: string;
            /** @description Whose script it is, or for whom a client acts; null for a service. */
            person: components["schemas"]["PersonRef"] | null;
            /** @description The programmes. */
            programmes: components["schemas"]["KeyProgramme"][];
            /** @description What the key opens. */
            scopes: components["schemas"]["Scope"][];
        };
        /** @description The supervisor's working length of one canal; it changes nothing of the plan. */
        OwnLength: {
            /** @description The canal by its name; empty or null for the whole tooth. */
            canal: string;
            /** @description From the canal's reference point, as the plan's. */
            length_mm: number;
        };
        /** @description The supervisor's working length of one canal; it changes nothing of the plan. */
        OwnLengthRequest: {
            /** @description The canal by its name; empty or null for the whole tooth. */
            canal: string;
            /** @description From the canal's reference point, as the plan's. */
            length_mm: number;
        };
        /** @description The step has been worked fewer than `n` times. Every loop passes through one of these. */
        PassesBelow: {
            /** @description How many. */
            n: number;
            /** @description The step, by its id in the run sheet. */
            node: string;
            /**
             * @description Which test it is: it tells the members of a choice apart. (enum property replaced by openapi-typescript)
             * @enum {string}
             */
            test: "passes_below";
        };
        /** @description The password of the person who is signed in, once more. */
        PasswordGivenRequest: {
            /** @description The password. */
            password: string;
        };
        /** @description One insertion of an instrument that goes into the canal to work there. */
        PastInsertion: {
            /**
             * to
             * @description Where the tip stopped, from the reference point.
             */
            depth_mm: number;
            /**
             * instrument
             * @description Key in the kit.
             */
            instrument: string;
            /**
             * phase
             * @description The phase of the technique, by its key.
             */
            phase: string;
            /**
             * step
             * @description Id of the step in the order of work that was followed then.
             */
            step: string;
            /**
             * worked to the stop
             * @description The stop that was set for it.
             */
            stop_mm: number | null;
            /**
             * led in to resistance
             * @description It was led in until it met resistance, so its depth tells how wide the canal is.
             */
            to_resistance: boolean;
        };
        /** @description One insertion of an instrument that goes into the canal to work there. */
        PastInsertionRequest: {
            /**
             * to
             * @description Where the tip stopped, from the reference point.
             */
            depth_mm: number;
            /**
             * instrument
             * @description Key in the kit.
             */
            instrument: string;
            /**
             * phase
             * @description The phase of the technique, by its key.
             */
            phase: string;
            /**
             * step
             * @description Id of the step in the order of work that was followed then.
             */
            step: string;
            /**
             * worked to the stop
             * @description The stop that was set for it.
             * @default null
             */
            stop_mm?: number | null;
            /**
             * led in to resistance
             * @description It was led in until it met resistance, so its depth tells how wide the canal is.
             * @default false
             */
            to_resistance?: boolean;
        };
        /**
         * @description Why an instrument went deeper.
         * @enum {string}
         */
        PastStopCause: "stop_moved" | "reference_changed" | "tip_bleeding" | "tip_wet" | "not_known";
        /** @description What is charted of a canal. As a body: what changes of it; what is left out stays. */
        PatchedCanalChangesRequest: {
            /** @description Width of the apical opening where it was seen to be wide. */
            apex_mm?: number | null;
            /** @description Schneider's angle, in degrees; null: not measured. */
            curvature_deg?: number | null;
            /** @description From the canal's end to the middle of its curve. */
            curve_from_end_mm?: number | null;
            /** @description Radius of the curve, in millimetres; null: not measured. */
            curve_radius_mm?: number | null;
            /** @description From the reference point to where the first curve begins. */
            curve_start_mm?: number | null;
            /** @description Whether the canal was found. */
            finding?: components["schemas"]["Finding"];
            /** @description First hand size that bound at the end when it was gauged after coronal flaring. */
            first_binder_size?: number | null;
            /** @description Its name, for people. */
            name?: string;
            /** @description From the reference point to the orifice. */
            orifice_mm?: number | null;
            /** @description Where on the crown lengths are measured from; empty: not chosen. */
            reference_point?: string;
            /** @description What the image shows of resorption at the root's end. */
            resorption?: components["schemas"]["Resorption"];
            /** @description The thinnest wall, measured on this tooth. */
            wall?: components["schemas"]["WallInputRequest"] | null;
            /** @description Measured widths, used in place of the published ones; from the end upwards. */
            widths?: components["schemas"]["WidthInputRequest"][];
        };
        /** @description What changes of a case; what is left out stays. */
        PatchedCaseChangesRequest: {
            /** @description Somebody looked: what was refused as `alias-looks-like-a-name` is none. */
            alias_is_no_name?: boolean;
            /** @description Whether the tooth is as most of its kind are. */
            anatomy?: components["schemas"]["Anatomy"];
            /** @description All that a person recorded as difficult: codes of `difficulty-factors`, each a factor, a colon and a level. */
            factors?: string[];
            /** @description Dam in place and tight: in the clinic nothing opens without it. */
            isolated?: boolean;
            /** @description In place of a mistyped one, which goes everywhere. */
            patient_alias?: string;
            /** @description A perforation is suspected. */
            perforation?: boolean;
            /** @description The tooth has a root filling already. */
            root_filled?: boolean;
            /** @description Training block, extracted tooth or clinic. */
            setting?: components["schemas"]["Setting"];
            /**
             * Format: uuid
             * @description Who supervises; null: nobody yet.
             */
            supervisor_id?: string | null;
        };
        /** @description What changes of somebody's membership; what is left out stays. */
        PatchedMemberChangesRequest: {
            /** @description What it is grouped by. */
            group?: string;
            /** @description What the person is in the programme. */
            role?: components["schemas"]["Role"];
            /**
             * Format: date
             * @description Of a student: the last day on which they may treat patients; null: they may not.
             */
            treats_patients_until?: string | null;
        };
        /** @description What changes of a webhook; what is left out stays. */
        PatchedWebhookChangesRequest: {
            /** @description Begins with `https://`. */
            address?: string;
            /** @description Of these it is told; empty: of all. */
            kinds?: components["schemas"]["FeedKind"][];
            /** @description Active again also where it was given up. */
            state?: components["schemas"]["WebhookSwitch"];
        };
        /**
         * @description How the canals of one root run from orifices to foramina.
         * @enum {string}
         */
        Pattern: "separate" | "2-1" | "1-2" | "2-1-2" | "1-2-1" | "unknown";
        /**
         * @description Why the work rests for a while.
         * @enum {string}
         */
        PauseCause: "sensitivity" | "normal_bleeding" | "ledge_suspected" | "not_sure" | "other";
        /** @description This canal stands still until a supervisor lets it go on. */
        PausePayload: {
            /**
             * @description Which kind it is: it tells the members of a choice apart. (enum property replaced by openapi-typescript)
             * @enum {string}
             */
            kind: "pause";
            /** @description Why. */
            reason: string;
            /** @description Which thing it is about. */
            what: components["schemas"]["PauseCause"];
        };
        /** @description This canal stands still until a supervisor lets it go on. */
        PausePayloadRequest: {
            /**
             * @description Which kind it is: it tells the members of a choice apart. (enum property replaced by openapi-typescript)
             * @enum {string}
             */
            kind: "pause";
            /**
             * @description Why.
             * @default
             */
            reason?: string;
            /**
             * @description Which thing it is about.
             * @default other
             */
            what?: components["schemas"]["PauseCause"];
        };
        /** @description A list of people, as a spreadsheet saves it. */
        PeopleListGivenRequest: {
            /** @description CSV (RFC 4180), or with semicolons or tabs. The first line names the columns: name, user name, role, group. */
            text: string;
        };
        /** @description What would come of a list; nothing of it is stored. */
        PeopleListShown: {
            /** @description Its lines, in order; empty ones are left out. */
            lines: components["schemas"]["ListedLine"][];
        };
        /** @description One page of who belongs to a programme. */
        PeoplePage: {
            /**
             * Format: uri
             * @description Address of the next page; null: this is the last.
             */
            next: string | null;
            /**
             * Format: uri
             * @description Address of the page before; null: this is the first.
             */
            previous: string | null;
            /** @description The rows of this page. */
            results: components["schemas"]["MemberShown"][];
        };
        /** @description A stored person, of whom others see the id and the name alone. */
        PersonRef: {
            /**
             * Format: uuid
             * @description Its own id.
             */
            id: string;
            /** @description Its name, for people. */
            name: string;
        };
        /** @description One phase. Which of the optional fields it needs depends on its kind. */
        Phase: {
            /**
             * passes expected
             * @description How many passes are expected.
             */
            expected_passes: number | null;
            /**
             * from size
             * @description First size of the phase; null: as the technique has it.
             */
            from_size: number | null;
            /**
             * hold point
             * @description Where a supervisor's sign-off is asked for; empty or null: nowhere.
             */
            hold_point: string | null;
            /**
             * settings with its hold point
             * @description Settings in which a supervisor's sign-off is asked for at it; a programme may ask for it in all.
             */
            hold_point_in: components["schemas"]["Setting"][];
            /**
             * asks for an image
             * @description An image is asked for at it.
             */
            image: boolean;
            /**
             * key
             * @description Which one it is, in a word that stays the same.
             */
            key: string;
            /**
             * kind
             * @description Which kind it is: it tells the members of a choice apart.
             */
            kind: components["schemas"]["PhaseKind"];
            /**
             * passes at most
             * @description How many passes there may be at most.
             */
            most_passes: number | null;
            /**
             * begins again from
             * @description The phase that a pass begins again from; null: it is not repeated.
             */
            repeat_from: string | null;
            /**
             * settings
             * @description The settings it is for.
             */
            settings: components["schemas"]["Setting"][];
            /**
             * each step shorter by
             * @description How much shorter each size goes, in millimetres; null: as the phase needs none.
             */
            step_mm: number | null;
            /**
             * steps
             * @description The steps, in order.
             */
            steps: number | null;
            /**
             * title
             * @description What it is called.
             */
            title: string;
            /**
             * works to the estimated length
             * @description Works to the estimated length: before the length is known.
             */
            to_estimate: boolean;
            /**
             * to size
             * @description Last hand size of a TO_LENGTH phase; none means up to the final size.
             */
            to_size: number | null;
            /**
             * why
             * @description Why.
             */
            why: string;
        };
        /**
         * @description * `sign_off`: A hold point, with an image where the phase says so.
         *     * `to_length`: Hand sizes, each worked until it is loose at length.
         *     * `flare`: Coronal instruments to resistance, steepest taper first.
         *     * `gauge`: The first hand size that binds at the end, felt after coronal flaring and before anything shapes.
         *     * `descend`: The series from its largest to its smallest, to resistance; passes repeat until the smallest is at length.
         *     * `ascend`: The series up to the final size, one size at a time, to length.
         *     * `step_back`: Larger hand sizes, each a step shorter than the one before.
         *     * `confirm`: Gauges the final size with hand instruments.
         * @enum {string}
         */
        PhaseKind: "sign_off" | "to_length" | "flare" | "gauge" | "descend" | "ascend" | "step_back" | "confirm" | "rinse" | "cone" | "fill";
        /** @description One phase. Which of the optional fields it needs depends on its kind. */
        PhaseRequest: {
            /**
             * passes expected
             * @description How many passes are expected.
             * @default null
             */
            expected_passes?: number | null;
            /**
             * from size
             * @description First size of the phase; null: as the technique has it.
             * @default null
             */
            from_size?: number | null;
            /**
             * hold point
             * @description Where a supervisor's sign-off is asked for; empty or null: nowhere.
             * @default null
             */
            hold_point?: string | null;
            /**
             * settings with its hold point
             * @description Settings in which a supervisor's sign-off is asked for at it; a programme may ask for it in all.
             * @default [
             *       "block",
             *       "extracted",
             *       "clinic"
             *     ]
             */
            hold_point_in?: components["schemas"]["Setting"][];
            /**
             * asks for an image
             * @description An image is asked for at it.
             * @default false
             */
            image?: boolean;
            /**
             * key
             * @description Which one it is, in a word that stays the same.
             */
            key: string;
            /**
             * kind
             * @description Which kind it is: it tells the members of a choice apart.
             */
            kind: components["schemas"]["PhaseKind"];
            /**
             * passes at most
             * @description How many passes there may be at most.
             * @default null
             */
            most_passes?: number | null;
            /**
             * begins again from
             * @description The phase that a pass begins again from; null: it is not repeated.
             * @default null
             */
            repeat_from?: string | null;
            /**
             * settings
             * @description The settings it is for.
             * @default [
             *       "block",
             *       "extracted",
             *       "clinic"
             *     ]
             */
            settings?: components["schemas"]["Setting"][];
            /**
             * each step shorter by
             * @description How much shorter each size goes, in millimetres; null: as the phase needs none.
             * @default null
             */
            step_mm?: number | null;
            /**
             * steps
             * @description The steps, in order.
             * @default null
             */
            steps?: number | null;
            /**
             * title
             * @description What it is called.
             */
            title: string;
            /**
             * works to the estimated length
             * @description Works to the estimated length: before the length is known.
             * @default false
             */
            to_estimate?: boolean;
            /**
             * to size
             * @description Last hand size of a TO_LENGTH phase; none means up to the final size.
             * @default null
             */
            to_size?: number | null;
            /**
             * why
             * @description Why.
             */
            why: string;
        };
        /** @description A place on the image: columns from the left edge, rows from the upper one; halves and tenths are meant. */
        Pixel: {
            /**
             * @description How many pixels of the screen one pixel of the image was wide when the mark was set or last moved. How far off
             *     the mark is follows from it. None: not told.
             */
            screen_px_per_px: number | null;
            /** @description Columns from the left edge. */
            x_px: number;
            /** @description Rows from the upper edge. */
            y_px: number;
        };
        /** @description A place on the image: columns from the left edge, rows from the upper one; halves and tenths are meant. */
        PixelRequest: {
            /**
             * @description How many pixels of the screen one pixel of the image was wide when the mark was set or last moved. How far off
             *     the mark is follows from it. None: not told.
             * @default null
             */
            screen_px_per_px?: number | null;
            /** @description Columns from the left edge. */
            x_px: number;
            /** @description Rows from the upper edge. */
            y_px: number;
        };
        /** @description From one pixel to the next, as the image file says it. */
        PixelSpacing: {
            /** @description To the right, from column to column. */
            column_mm: number;
            /** @description Downwards, from row to row. */
            row_mm: number;
        };
        /** @description From one pixel to the next, as the image file says it. */
        PixelSpacingRequest: {
            /** @description To the right, from column to column. */
            column_mm: number;
            /** @description Downwards, from row to row. */
            row_mm: number;
        };
        /** @description The plan of one tooth. */
        Plan: {
            /** @description None in plans made before it was counted. */
            asks: components["schemas"]["AskedFor"] | null;
            /** @description What the phone shows at the chair without asking anybody; None in plans made before there was any. */
            at_the_chair: components["schemas"]["AtTheChair"] | null;
            /** @description The canals, each once. */
            canals: components["schemas"]["CanalPlan"][];
            /** @description What to know before the work. */
            cautions: components["schemas"]["Caution"][];
            /** @description Version of the data tables. */
            data_version: string;
            /** @description None for a training block. */
            difficulty: components["schemas"]["Difficulty"] | null;
            /** @description What the canal is rinsed with; null: nothing. */
            irrigant: string;
            /** @description The kit. */
            kit: string;
            /** @description What this is for and what it does not replace. */
            notice: string;
            /** @description Canals are worked one after the other. */
            one_at_a_time: components["schemas"]["TrayOrder"];
            /** @description Version of the planner that made it. */
            planner_version: string;
            /** @description The rule behind each number of the tooth as a whole; a canal has its own. */
            rationales: components["schemas"]["Rationale"][];
            /** @description Rows of the data tables that it rests on. */
            rows_used: components["schemas"]["RowUsed"][];
            /**
             * @description Version of what this is written in.
             * @constant
             */
            schema_version: 1;
            /** @description Training block, extracted tooth or clinic. */
            setting: string;
            /** @description Which stop each instrument gets in each canal. */
            stop_table: components["schemas"]["StopRow"][];
            /** @description The technique. */
            technique: string;
            /** @description The tooth. */
            tooth: components["schemas"]["ToothNames"];
            /** @description In which order instruments are taken up. */
            tray: components["schemas"]["TrayOrder"];
            /** @description What is laid out. */
            tray_list: components["schemas"]["TrayItem"][];
        };
        /** @description From one version to another. `canals` lists only those where something changed, the most dangerous first. */
        PlanChanges: {
            /** @description The canals, each once. */
            canals: components["schemas"]["CanalChanges"][];
            /** @description Of the tooth as a whole. */
            cautions_came: components["schemas"]["Caution"][];
            /** @description Cautions that the earlier one had and the later one has not. */
            cautions_went: components["schemas"]["Caution"][];
            /** @description Number of the earlier version. */
            from_number: number;
            /** @description Nothing changed that a plan shows or rests on. */
            nothing: boolean;
            /** @description Number of the later version. */
            to_number: number;
            /** @description The tooth. */
            tooth: components["schemas"]["Change"][];
        };
        /** @description One tooth to be planned. */
        PlanInput: {
            /**
             * anatomy
             * @description Whether the tooth is as most of its kind are.
             */
            anatomy: components["schemas"]["Anatomy"];
            /**
             * canals
             * @description The canals, each once.
             */
            canals: components["schemas"]["CanalInput"][];
            /**
             * choices
             * @description What the person who plans chose.
             */
            choices: components["schemas"]["Choices"];
            /**
             * what makes the case difficult
             * @description All that a person recorded as difficult: codes of `difficulty-factors`, each a factor, a colon and a level.
             */
            factors: string[];
            /**
             * dam in place and tight
             * @description Dam in place and tight: in the clinic nothing opens without it.
             */
            isolated: boolean;
            /**
             * kit
             * @description The kit.
             */
            kit: components["schemas"]["Kit"];
            /**
             * let pass by a supervisor
             * @description Cautions that a supervisor let pass.
             */
            overrides: components["schemas"]["Override"][];
            /**
             * perforation suspected
             * @description A perforation is suspected.
             */
            perforation: boolean;
            /**
             * already root-filled
             * @description The tooth has a root filling already.
             */
            root_filled: boolean;
            /**
             * roots
             * @description The roots.
             */
            roots: components["schemas"]["RootInput"][];
            /**
             * canals drawn for the bands
             * @description How many canals to draw from the published spreads for the bands; 0 for the medians alone.
             */
            samples: number;
            /**
             * @description Version of what this is written in.
             * @constant
             */
            schema_version: 1;
            /** @description Picks which canals are drawn. */
            seed: number;
            /**
             * setting
             * @description Training block, extracted tooth or clinic.
             */
            setting: components["schemas"]["Setting"];
            /**
             * technique
             * @description The technique.
             */
            technique: components["schemas"]["Technique"];
            /**
             * figure of the programme
             * @description The programme's own values in place of figures of the data tables, by key.
             */
            thresholds: {
                [key: string]: number;
            };
            /**
             * tooth
             * @description ISO 3950 designation.
             */
            tooth: string;
        };
        /** @description One tooth to be planned, with everything the plan rests on. */
        PlanRequest: {
            /**
             * anatomy
             * @description Whether the tooth is as most of its kind are.
             * @default usual
             */
            anatomy?: components["schemas"]["Anatomy"];
            /**
             * canals
             * @description The canals, each once.
             */
            canals: components["schemas"]["CanalInputRequest"][];
            /**
             * choices
             * @description What the person who plans chose.
             */
            choices: components["schemas"]["ChoicesRequest"];
            /**
             * what makes the case difficult
             * @description All that a person recorded as difficult: codes of `difficulty-factors`, each a factor, a colon and a level.
             * @default []
             */
            factors?: string[];
            /**
             * dam in place and tight
             * @description Dam in place and tight: in the clinic nothing opens without it.
             * @default false
             */
            isolated?: boolean;
            /**
             * kit
             * @description The kit.
             */
            kit: components["schemas"]["KitRequest"];
            /**
             * let pass by a supervisor
             * @description Cautions that a supervisor let pass.
             * @default []
             */
            overrides?: components["schemas"]["OverrideRequest"][];
            /**
             * perforation suspected
             * @description A perforation is suspected.
             * @default false
             */
            perforation?: boolean;
            /**
             * already root-filled
             * @description The tooth has a root filling already.
             * @default false
             */
            root_filled?: boolean;
            /**
             * roots
             * @description The roots.
             * @default []
             */
            roots?: components["schemas"]["RootInputRequest"][];
            /**
             * canals drawn for the bands
             * @description How many canals to draw from the published spreads for the bands; 0 for the medians alone.
             * @default 0
             */
            samples?: number;
            /**
             * @description Version of what this is written in.
             * @default 1
             * @constant
             */
            schema_version?: 1;
            /**
             * @description Picks which canals are drawn.
             * @default 0
             */
            seed?: number;
            /**
             * setting
             * @description Training block, extracted tooth or clinic.
             */
            setting: components["schemas"]["Setting"];
            /** @description The key of a provided technique, or a whole technique of one's own. */
            technique: string | components["schemas"]["TechniqueRequest"];
            /**
             * figure of the programme
             * @description The programme's own values in place of figures of the data tables, by key.
             * @default {}
             */
            thresholds?: {
                [key: string]: number;
            };
            /** @description The tooth. */
            tooth: components["schemas"]["ToothNameRequest"];
        };
        /**
         * @description * `waiting`: Submitted, and not decided yet.
         *     * `revoked`: It was approved, and whoever gave the approval or a coordinator has withdrawn that.
         *     * `superseded`: Another version stands in its place.
         * @enum {string}
         */
        PlanState: "draft" | "waiting" | "approved" | "returned" | "revoked" | "superseded";
        /** @description Where the plan of a case stands. */
        PlanStatus: {
            /** @description The last version that was approved, whether or not the approval still counts. */
            approved_number: number | null;
            /** @description What to do next; empty where nothing is due. */
            do: string;
            /** @description The version that stands. */
            number: number | null;
            /** @description It in one sentence, for people. */
            says: string;
            /** @description The case has changed since that version was made. */
            stale: boolean;
            /** @description How it is. */
            state: components["schemas"]["PlanStatusState"];
        };
        /**
         * @description * `none`: Not planned yet.
         *     * `revoked`: Its approval was withdrawn: work halts until a plan is approved again.
         *     * `approval_void`: A version was approved, and the plan or the case has changed since: it must be asked for again.
         * @enum {string}
         */
        PlanStatusState: "none" | "draft" | "waiting" | "approved" | "returned" | "revoked" | "approval_void";
        /** @description A platform of courses to be registered, or as it is to be from now on. */
        PlatformGivenRequest: {
            /** @description Whether launches from it count. */
            active?: boolean;
            /** @description By which the platform knows this registration. */
            client_id: string;
            /** @description Those that count: launches of any other are refused. */
            deployment_ids: string[];
            /** @description Who issues the platform's tokens, letter by letter. */
            issuer: string;
            /** @description Where the platform's public keys lie. */
            key_set_address: string;
            /** @description Where the platform signs people in (OpenID Connect). */
            login_address: string;
            /** @description What it is called here. */
            name: string;
            /** @description Of the person who is signed in. */
            password: string;
            /** @description Whether who teaches a course supervises here; otherwise they do not sign in. */
            teachers_supervise?: boolean;
            /** @description Where the platform gives out tokens for its services. */
            token_address: string;
            /** @description What a token is asked of; empty: the token's address. */
            token_audience?: string;
        };
        /** @description The platforms whose courses lead to a programme. */
        PlatformList: {
            /** @description Address of the next page; null: this is the last. */
            readonly next: string | null;
            /** @description Address of the page before; null: this is the first. */
            readonly previous: string | null;
            /** @description The rows of this page. */
            results: components["schemas"]["PlatformShown"][];
        };
        /** @description A stored platform, and what it has to be told of this server. */
        PlatformShown: {
            /** @description Whether launches from it count. */
            active: boolean;
            /** @description By which the platform knows this registration. */
            client_id: string;
            /**
             * Format: date-time
             * @description When it was made.
             */
            created_at: string;
            /** @description Those that count: launches of any other are refused. */
            deployment_ids: string[];
            /** @description Grades that the platform was not told yet, or never took. */
            grades_waiting: number;
            /**
             * Format: uuid
             * @description Its own id.
             */
            id: string;
            /** @description Who issues the platform's tokens, letter by letter. */
            issuer: string;
            /** @description Where the platform's public keys lie. */
            key_set_address: string;
            /** @description Why it did not take the last one of them; empty: none was tried. */
            last_refusal: string;
            /** @description Where the platform signs people in (OpenID Connect). */
            login_address: string;
            /** @description Its name, for people. */
            name: string;
            /** @description Whether who teaches a course supervises here; otherwise they do not sign in. */
            teachers_supervise: boolean;
            /** @description Where the platform gives out tokens for its services. */
            token_address: string;
            /** @description What a token is asked of; empty: the token's address. */
            token_audience: string;
        };
        /** @description A place on the image. */
        PointRequest: {
            /** @description To the right, in millimetres. */
            x_mm: number;
            /** @description Downwards, in millimetres. */
            y_mm: number;
        };
        /** @description One canal of an exercise, as it is known before anything was in it. */
        PracticeCanal: {
            /** @description The canal by its name; empty or null for the whole tooth. */
            canal: string;
            /** @description Schneider's angle, in degrees; null: not measured. */
            curvature_deg: number | null;
            /** @description Where it begins to curve, from the reference point; None: it is straight. */
            curve_start_mm: number | null;
            /** @description All that is laid out for it. */
            instruments: components["schemas"]["TrayItem"][];
            /** @description The canal that it joins. */
            joins: string | null;
            /** @description Where on the crown lengths are measured from; empty: not chosen. */
            reference_point: string;
            /** @description How wide such canals are as a rule, reference point side first. */
            usual: components["schemas"]["ProfilePoint"][];
            /** @description From the reference point to where preparation ends, in millimetres; null: it cannot be told. */
            working_length_mm: number;
        };
        /** @description One page of exercises. */
        PracticeExercisePage: {
            /**
             * Format: uri
             * @description Address of the next page; null: this is the last.
             */
            next: string | null;
            /**
             * Format: uri
             * @description Address of the page before; null: this is the first.
             */
            previous: string | null;
            /** @description The rows of this page. */
            results: components["schemas"]["ExerciseListed"][];
        };
        /** @description One level of practice. */
        PracticeLevel: {
            /** @description In the order in which they are worked. */
            canals: string[];
            /** @description Which one it is, in a word that stays the same. */
            key: string;
            /** @description In words. */
            name: string;
        };
        /** @description One mistake and its consequence. */
        PracticeMistake: {
            /** @description Which one it is, in a word that stays the same. */
            code: string;
            /** @description The canal is the worse for it. */
            harms: boolean;
            /** @description How it is known. */
            know: string;
            /** @description It in one sentence, for people. */
            says: string;
            /** @description Where it is from. */
            source: string;
        };
        /** @description What was hidden, and the score of an exercise that was worked to its end. */
        PracticeReveal: {
            /** @description The canals, each once. */
            canals: components["schemas"]["RevealedCanal"][];
            /** @description None where the exercise was ended before all canals were worked. */
            score: components["schemas"]["PracticeScore"] | null;
        };
        /** @description The score of one exercise. */
        PracticeScore: {
            /** @description Its part for a canal without consequences of mistakes, from 0 to 100. */
            consequences: number;
            /** @description Mean error of the predictions that were made; None where none was. */
            error_mm: number | null;
            /** @description How many insertions were not in the order of work. */
            insertions_needless: number;
            /** @description Needless insertions are not among them. */
            mistakes: number;
            /** @description Its part for insertions that were needed, from 0 to 100. */
            needless: number;
            /** @description The whole, from 0 to 100. */
            points: number;
            /** @description Its part for predictions, from 0 to 100. */
            prediction: number;
            /** @description Its part for steps, from 0 to 100. */
            steps: number;
            /** @description Of one who keeps to the order of work in this very canal. */
            steps_planned: number;
            /** @description How many things were done. */
            steps_taken: number;
        };
        /** @description What can be practised, and how far the person who asks is. */
        PracticeShown: {
            /** @description The easiest first. */
            levels: components["schemas"]["PracticeLevel"][];
            /** @description Mean of the last four of those; null: none yet. */
            points: number | null;
            /** @description Key of the level to go on with. */
            proposed: string;
            /**
             * Format: uuid
             * @description The newest exercise to go on with; null: none.
             */
            unended_id?: string | null;
            /** @description How many exercises were worked to the end. */
            worked: number;
        };
        /** @description One page of tasks of practice. */
        PracticeTaskPage: {
            /**
             * Format: uri
             * @description Address of the next page; null: this is the last.
             */
            next: string | null;
            /**
             * Format: uri
             * @description Address of the page before; null: this is the first.
             */
            previous: string | null;
            /** @description The rows of this page. */
            results: components["schemas"]["TaskShown"][];
        };
        /** @description Tooth length on a pre-operative image, from the reference point to the radiographic apex. */
        PreOperativeImage: {
            /**
             * after coronal flaring
             * @description It was taken after coronal flaring.
             */
            after_flaring: boolean;
            /**
             * how sure its marks are
             * @description Of the tooth's length; None where it was not marked on an image.
             */
            interval: components["schemas"]["ImageInterval"] | null;
            /**
             * @description How it was measured: it tells the kinds of readings apart. (enum property replaced by openapi-typescript)
             * @enum {string}
             */
            method: "pre_operative_image";
            /**
             * reference point
             * @description Where on the crown lengths are measured from; empty: not chosen.
             */
            reference_point: string;
            /**
             * tooth length
             * @description Length of the tooth, in millimetres.
             */
            tooth_mm: number;
        };
        /** @description Tooth length on a pre-operative image, from the reference point to the radiographic apex. */
        PreOperativeImageKept: {
            /**
             * after coronal flaring
             * @description It was taken after coronal flaring.
             */
            after_flaring: boolean;
            /**
             * how sure its marks are
             * @description Of the tooth's length; None where it was not marked on an image.
             */
            interval: components["schemas"]["ImageIntervalKept"] | null;
            /**
             * @description How it was measured: it tells the kinds of readings apart. (enum property replaced by openapi-typescript)
             * @enum {string}
             */
            method: "pre_operative_image";
            /**
             * reference point
             * @description Where on the crown lengths are measured from; empty: not chosen.
             */
            reference_point: string;
            /**
             * tooth length
             * @description Length of the tooth, in millimetres.
             */
            tooth_mm: number;
        };
        /** @description Tooth length on a pre-operative image, from the reference point to the radiographic apex. */
        PreOperativeImageRequest: {
            /**
             * after coronal flaring
             * @description It was taken after coronal flaring.
             * @default false
             */
            after_flaring?: boolean;
            /**
             * how sure its marks are
             * @description Of the tooth's length; None where it was not marked on an image.
             * @default null
             */
            interval?: components["schemas"]["ImageIntervalRequest"] | null;
            /**
             * @description How it was measured: it tells the kinds of readings apart. (enum property replaced by openapi-typescript)
             * @enum {string}
             */
            method: "pre_operative_image";
            /**
             * reference point
             * @description Where on the crown lengths are measured from; empty: not chosen.
             */
            reference_point: string;
            /**
             * tooth length
             * @description Length of the tooth, in millimetres.
             */
            tooth_mm: number;
        };
        /** @description Tooth length on a pre-operative image, from the reference point to the radiographic apex. */
        PreOperativeImageRequestKept: {
            /**
             * after coronal flaring
             * @description It was taken after coronal flaring.
             * @default false
             */
            after_flaring?: boolean;
            /**
             * how sure its marks are
             * @description Of the tooth's length; None where it was not marked on an image.
             * @default null
             */
            interval?: components["schemas"]["ImageIntervalRequestKept"] | null;
            /**
             * @description How it was measured: it tells the kinds of readings apart. (enum property replaced by openapi-typescript)
             * @enum {string}
             */
            method: "pre_operative_image";
            /**
             * reference point
             * @description Where on the crown lengths are measured from; empty: not chosen.
             */
            reference_point: string;
            /**
             * tooth length
             * @description Length of the tooth, in millimetres.
             */
            tooth_mm: number;
        };
        /**
         * @description What has to be there before any canal is worked.
         *     * `revoked`: The approval of the plan in force was withdrawn.
         *     * `dam_off`: The dam is off or leaking, or nobody has said in this visit that it is on. No sign-off takes its place.
         * @enum {string}
         */
        Prerequisite: "closed" | "halted" | "revoked" | "dam_off" | "nobody_on_site" | "approval_lapsed";
        /** @description What one study says of how often a canal is there. */
        Prevalence: {
            /** @description Upper end, as a share of 1. */
            high_share: number | null;
            /** @description How the figure is known: read, read second-hand, from memory, derived. */
            know: string;
            /** @description Lower end of the confidence interval or of the range, as the text says. */
            low_share: number | null;
            /** @description It in one sentence, for people. */
            says: string;
            /** @description Share of teeth, 0 to 1. */
            share: number | null;
            /** @description Where it is from. */
            source: string;
            /** @description The year it was published; null: not known. */
            year: number | null;
        };
        /** @description What a plan would be asked for with, and the version to compare it with. */
        PreviewChangesGivenRequest: {
            /** @description Number of the version to compare with. */
            against: number;
            /** @description What the person who plans chose. */
            choices: components["schemas"]["ChoicesRequest"];
            /**
             * Format: uuid
             * @description Id of the kit.
             */
            kit_id: string;
            /** @description Key of a technique of the programme's list. */
            technique: string;
        };
        /**
         * @description Problem details (RFC 9457).
         * @example {
         *       "type": "/api/v1/problems/plan-stale",
         *       "title": "Conflict",
         *       "status": 409,
         *       "detail": "The case has changed since plan 2 was made. Have it planned again and submit the new plan.",
         *       "errors": []
         *     }
         */
        Problem: {
            /** @description For people: what is wrong and what to do. */
            detail: string;
            /** @description Everything that is wrong, one by one; empty where it is nothing that was sent. */
            errors: components["schemas"]["ProblemError"][];
            /** @description The number to go on with, where one was left out. */
            expected?: number;
            /** @description The status of the answer. */
            status: number;
            /** @description What the status is called. */
            title: string;
            /**
             * Format: uri-reference
             * @description `/api/v1/problems/` and a code, which is explained at that address.
             */
            type: string;
        };
        /** @description A code of a problem, or of one of its `errors`. */
        ProblemCode: {
            /** @description Which one it is, in a word that stays the same. */
            code: string;
            /** @description What it means and what to do. */
            meaning: string;
            /** @description What to do. */
            remedy: string;
            /** @description Of the answers in which it stands. */
            statuses: number[];
            /** @description Null for a code in the `type` of a problem; else the problem in whose `errors` alone it stands. */
            within: string | null;
        };
        /** @description All of them, by code. */
        ProblemCodes: {
            /** @description Address of the next page; null: this is the last. */
            next: string | null;
            /** @description Address of the page before; null: this is the first. */
            previous: string | null;
            /** @description The rows of this page. */
            results: components["schemas"]["ProblemCode"][];
        };
        /** @description One thing that is wrong. */
        ProblemError: {
            /** @description Explained at `/api/v1/problems/` and the code. */
            code: string;
            /** @description What is wrong and what to do. */
            detail: string;
            /** @description Of a text that was sent, the first being 1. */
            line?: number;
            /** @description JSON pointer into what was sent, as a URI fragment. A plan refused for what is charted points into the planner's input. */
            pointer: string;
        };
        /** @description How wide the prepared canal is at one depth. */
        ProfilePoint: {
            /** @description Diameter there, in millimetres. */
            diameter_mm: number;
            /** @description Millimetres from the reference point. */
            from_reference_mm: number;
        };
        /** @description A stored programme, as much of it as choosing one needs. */
        ProgrammeRef: {
            /**
             * Format: uuid
             * @description Its own id.
             */
            id: string;
            /** @description Demonstration: no such school, people or cases. */
            invented: boolean;
            /** @description Its name, for people. */
            name: string;
        };
        /** @description A stored programme, and what the person who asks is in it. */
        ProgrammeShown: {
            /**
             * Format: uuid
             * @description Its own id.
             */
            id: string;
            /** @description Demonstration: no such school. */
            invented: boolean;
            /** @description Its name, for people. */
            name: string;
            /** @description What you are in it; null for a service. */
            role: components["schemas"]["Role"] | null;
            /** @description Who supervises. */
            supervisors: components["schemas"]["SupervisorShown"][];
            /** @description Figures of the programme's own in place of published ones, by key. */
            thresholds: {
                [key: string]: number;
            };
        };
        /** @description How far the work has come in the order of work that was followed so far. */
        Progress: {
            /**
             * step that is due
             * @description The step that is due.
             */
            at: string;
            /**
             * length signed off
             * @description The working length that was signed off and worked to; a new one is signed off before the work goes on.
             */
            length_mm: number | null;
            /**
             * insertion
             * @description All that has been in the canal, in order.
             */
            made: components["schemas"]["PastInsertion"][];
            /**
             * that phase is over
             * @description That phase is finished, and the next one is due.
             */
            over: boolean;
            /**
             * phase it stands in
             * @description The phase of that step; where there is none any more, the last that was worked.
             */
            phase: string;
            /**
             * steps walked
             * @description Steps walked before.
             */
            walked_before: components["schemas"]["Walked"];
        };
        /** @description How far the work has come in the order of work that was followed so far. */
        ProgressRequest: {
            /**
             * step that is due
             * @description The step that is due.
             */
            at: string;
            /**
             * length signed off
             * @description The working length that was signed off and worked to; a new one is signed off before the work goes on.
             */
            length_mm: number | null;
            /**
             * insertion
             * @description All that has been in the canal, in order.
             * @default []
             */
            made?: components["schemas"]["PastInsertionRequest"][];
            /**
             * that phase is over
             * @description That phase is finished, and the next one is due.
             * @default false
             */
            over?: boolean;
            /**
             * phase it stands in
             * @description The phase of that step; where there is none any more, the last that was worked.
             */
            phase: string;
            /**
             * steps walked
             * @description Steps walked before.
             */
            walked_before: components["schemas"]["WalkedRequest"];
        };
        /** @description The public half of a stored key, by itself in an object. */
        PushKeyShown: {
            /** @description A point on P-256, base64url without padding: the browser's server key. */
            key: string;
        };
        /** @description Where a browser takes notifications, and its keys. */
        PushSubscriptionGivenRequest: {
            /** @description The browser's secret for this subscription, base64url. */
            auth: string;
            /** @description HTTPS, at a public name. */
            endpoint: string;
            /** @description The browser's public key, base64url. */
            p256dh: string;
        };
        /** @description A stored correction of an image: who made it, when and why. */
        PutRightShown: {
            /**
             * Format: date-time
             * @description When it was.
             */
            at: string;
            /** @description Who did it. */
            by: components["schemas"]["PersonRef"];
            /** @description Where it was; empty: the whole tooth. */
            canal: string;
            /** @description Empty: to the whole tooth; also where it was struck. */
            moved_to: string;
            /** @description It counts for nothing since. Else it was moved. */
            struck: boolean;
            /** @description Why. */
            why: components["schemas"]["StruckWhy"];
        };
        /** @description An instrument of known length on the same image gives the scale. */
        Ratio: {
            /**
             * after coronal flaring
             * @description It was taken after coronal flaring.
             */
            after_flaring: boolean;
            /**
             * instrument
             * @description Length of the instrument, in millimetres.
             */
            instrument_mm: number;
            /**
             * instrument on the image
             * @description Length of the instrument on the image, in millimetres.
             */
            instrument_on_image_mm: number;
            /**
             * how sure its marks are
             * @description Of the tooth's length; None where it was not marked on an image.
             */
            interval: components["schemas"]["ImageInterval"] | null;
            /**
             * @description How it was measured: it tells the kinds of readings apart. (enum property replaced by openapi-typescript)
             * @enum {string}
             */
            method: "ratio";
            /**
             * reference point
             * @description Where on the crown lengths are measured from; empty: not chosen.
             */
            reference_point: string;
            /**
             * tooth on the image
             * @description Length of the tooth on the image, in millimetres.
             */
            tooth_on_image_mm: number;
        };
        /** @description An instrument of known length on the same image gives the scale. */
        RatioKept: {
            /**
             * after coronal flaring
             * @description It was taken after coronal flaring.
             */
            after_flaring: boolean;
            /**
             * instrument
             * @description Length of the instrument, in millimetres.
             */
            instrument_mm: number;
            /**
             * instrument on the image
             * @description Length of the instrument on the image, in millimetres.
             */
            instrument_on_image_mm: number;
            /**
             * how sure its marks are
             * @description Of the tooth's length; None where it was not marked on an image.
             */
            interval: components["schemas"]["ImageIntervalKept"] | null;
            /**
             * @description How it was measured: it tells the kinds of readings apart. (enum property replaced by openapi-typescript)
             * @enum {string}
             */
            method: "ratio";
            /**
             * reference point
             * @description Where on the crown lengths are measured from; empty: not chosen.
             */
            reference_point: string;
            /**
             * tooth on the image
             * @description Length of the tooth on the image, in millimetres.
             */
            tooth_on_image_mm: number;
        };
        /** @description The reason of one number of a plan. */
        Rationale: {
            /**
             * @description One for each place of a list, or for each value that the number has; none where it was chosen, or searched for in
             *     more steps than a line holds.
             */
            calculations: components["schemas"]["Calculation"][];
            /** @description The numbers that the rule started from. */
            inputs: components["schemas"]["RationaleInput"][];
            /**
             * @description Which number: the field's path in the canal's plan, `needle.ceiling_mm` for instance, or in the tooth's; `.0` for
             *     a place of a list, none for all of them; stops by the name that the stop table gives them.
             */
            of: string;
            /** @description Keys of `rows_used`. */
            rows: string[];
            /** @description One sentence. */
            rule: string;
        };
        /** @description One number that a rule started from. */
        RationaleInput: {
            /** @description Its name, for people. */
            name: string;
            /** @description The unit. */
            unit: string;
            /** @description The value. */
            value: number;
        };
        /** @description An instrument of known length on the same image gives the scale. */
        RatioRequest: {
            /**
             * after coronal flaring
             * @description It was taken after coronal flaring.
             * @default false
             */
            after_flaring?: boolean;
            /**
             * instrument
             * @description Length of the instrument, in millimetres.
             */
            instrument_mm: number;
            /**
             * instrument on the image
             * @description Length of the instrument on the image, in millimetres.
             */
            instrument_on_image_mm: number;
            /**
             * how sure its marks are
             * @description Of the tooth's length; None where it was not marked on an image.
             * @default null
             */
            interval?: components["schemas"]["ImageIntervalRequest"] | null;
            /**
             * @description How it was measured: it tells the kinds of readings apart. (enum property replaced by openapi-typescript)
             * @enum {string}
             */
            method: "ratio";
            /**
             * reference point
             * @description Where on the crown lengths are measured from; empty: not chosen.
             */
            reference_point: string;
            /**
             * tooth on the image
             * @description Length of the tooth on the image, in millimetres.
             */
            tooth_on_image_mm: number;
        };
        /** @description An instrument of known length on the same image gives the scale. */
        RatioRequestKept: {
            /**
             * after coronal flaring
             * @description It was taken after coronal flaring.
             * @default false
             */
            after_flaring?: boolean;
            /**
             * instrument
             * @description Length of the instrument, in millimetres.
             */
            instrument_mm: number;
            /**
             * instrument on the image
             * @description Length of the instrument on the image, in millimetres.
             */
            instrument_on_image_mm: number;
            /**
             * how sure its marks are
             * @description Of the tooth's length; None where it was not marked on an image.
             * @default null
             */
            interval?: components["schemas"]["ImageIntervalRequestKept"] | null;
            /**
             * @description How it was measured: it tells the kinds of readings apart. (enum property replaced by openapi-typescript)
             * @enum {string}
             */
            method: "ratio";
            /**
             * reference point
             * @description Where on the crown lengths are measured from; empty: not chosen.
             */
            reference_point: string;
            /**
             * tooth on the image
             * @description Length of the tooth on the image, in millimetres.
             */
            tooth_on_image_mm: number;
        };
        /** @description A reading of a canal's length. */
        ReadingGivenRequest: {
            /**
             * Format: uuid
             * @description Made by the sender, so that sending again is harmless.
             */
            id?: string;
            /** @description The reading. */
            reading: components["schemas"]["PreOperativeImageRequest"] | components["schemas"]["RatioRequest"] | components["schemas"]["ConfirmingImageRequest"] | components["schemas"]["ApexLocatorRequest"] | components["schemas"]["DirectSightRequest"];
        };
        /** @description The readings of a canal. */
        ReadingList: {
            /** @description Address of the next page; null: this is the last. */
            readonly next: string | null;
            /** @description Address of the page before; null: this is the first. */
            readonly previous: string | null;
            /** @description The rows of this page. */
            results: components["schemas"]["ReadingShown"][];
        };
        /** @description A length was taken at the chair. */
        ReadingPayloadKept: {
            /**
             * @description Which kind it is: it tells the members of a choice apart. (enum property replaced by openapi-typescript)
             * @enum {string}
             */
            kind: "reading";
            /** @description The reading that was taken. */
            taken: components["schemas"]["PreOperativeImageKept"] | components["schemas"]["RatioKept"] | components["schemas"]["ConfirmingImageKept"] | components["schemas"]["ApexLocatorKept"] | components["schemas"]["DirectSightKept"];
        };
        /** @description A length was taken at the chair. */
        ReadingPayloadRequestKept: {
            /**
             * @description Which kind it is: it tells the members of a choice apart. (enum property replaced by openapi-typescript)
             * @enum {string}
             */
            kind: "reading";
            /** @description The reading that was taken. */
            taken: components["schemas"]["PreOperativeImageRequestKept"] | components["schemas"]["RatioRequestKept"] | components["schemas"]["ConfirmingImageRequestKept"] | components["schemas"]["ApexLocatorRequestKept"] | components["schemas"]["DirectSightRequestKept"];
        };
        /** @description What one reading says. */
        ReadingResult: {
            /** @description Whether it counts towards the length. */
            counts: boolean;
            /** @description How it was measured: it tells the kinds of readings apart. */
            method: string;
            /** @description Why it counts, or why it does not. */
            why: string;
            /** @description From the reference point to where preparation ends, in millimetres; null: it cannot be told. */
            working_length_mm: number | null;
        };
        /** @description A stored reading: its value, and who took it when. */
        ReadingShown: {
            /** @description Who did it. */
            actor: components["schemas"]["PersonRef"];
            /**
             * Format: date-time
             * @description When it was.
             */
            at: string;
            /**
             * Format: uuid
             * @description Its own id.
             */
            id: string;
            /** @description Counts within the canal. */
            number: number;
            /** @description The reading. */
            reading: components["schemas"]["PreOperativeImage"] | components["schemas"]["Ratio"] | components["schemas"]["ConfirmingImage"] | components["schemas"]["ApexLocator"] | components["schemas"]["DirectSight"];
            /** @description Who struck it, when and why; null where it counts. */
            readonly struck: components["schemas"]["StruckShown"] | null;
        };
        /**
         * @description Whether a reason for a size is a least, a most, or only tells something.
         * @enum {string}
         */
        ReasonBound: "least" | "most" | "tells";
        /** @description Everything that was planned, done and decided in one case. */
        Record: {
            /** @description Sign-offs and exposures that were asked for. */
            asked: components["schemas"]["AskCounts"];
            /** @description The canals, each once. */
            canals: components["schemas"]["CanalRecord"][];
            /** @description Id of the case. */
            case_id: string;
            /** @description What to know before the work. */
            cautions: components["schemas"]["CautionRecord"][];
            /** @description What was not as planned, canal by canal, then what concerns the whole tooth. */
            deviations: components["schemas"]["Deviation"][];
            /** @description Instruments taken out of use. */
            discarded: components["schemas"]["Discarded"][];
            /** @description What services entered, and for whom. */
            entered: components["schemas"]["Entered"][];
            /** @description When and why the work was halted. */
            halts: components["schemas"]["HaltRecord"][];
            /** @description The images. */
            images: components["schemas"]["ImageListed"][];
            /** @description Images that were struck, moved or removed. */
            images_put_right: components["schemas"]["ImagePutRight"][];
            /** @description The instruments. */
            instruments: components["schemas"]["InstrumentUsed"][];
            /** @description The programme is a demonstration: no such school, people or cases. */
            invented: boolean;
            /** @description How much of each irrigant was used. */
            irrigants: components["schemas"]["IrrigantUsed"][];
            /**
             * Format: date-time
             * @description When the server had the last event; before there was one, when the case was opened.
             */
            last_at: string;
            /** @description What this is for and what it does not replace. */
            notice: string;
            /**
             * Format: date-time
             * @description When it was opened.
             */
            opened_at: string;
            /** @description Cautions that a supervisor let pass. */
            overrides: components["schemas"]["OverrideRecord"][];
            /** @description The alias of the patient. Never a real identity. */
            patient_alias: string;
            /** @description Of the last event; 0 where nothing was recorded. */
            position: number;
            /** @description The programme. */
            programme: string;
            /**
             * @description Version of what this is written in.
             * @constant
             */
            schema_version: 1;
            /** @description Training block, extracted tooth or clinic. */
            setting: string;
            /** @description Sign-offs by supervisors. */
            sign_offs: components["schemas"]["SignOffRecord"][];
            /** @description What was struck, by whom and why. */
            struck: components["schemas"]["StruckReading"][];
            /** @description The student whose case it is. */
            student: components["schemas"]["RecordPerson"];
            /** @description The supervisor; null: nobody yet. */
            supervisor: components["schemas"]["RecordPerson"] | null;
            /** @description What happened, in order, each in one sentence. */
            timeline: components["schemas"]["TimelineEntry"][];
            /** @description The tooth. */
            tooth: components["schemas"]["ToothNames"];
            /** @description The versions of the plan. */
            versions: components["schemas"]["VersionRecord"][];
            /** @description The visits. */
            visits: components["schemas"]["VisitRecord"][];
        };
        /** @description The depth that was felt and recorded at one step of the order of work. */
        RecordedDepth: {
            /**
             * felt at
             * @description Where the tip stopped, from the reference point; the stop or deeper counts as reached.
             */
            depth_mm: number;
            /**
             * step
             * @description The step in the run sheet.
             */
            node: string;
            /**
             * worked to the stop
             * @description The stop that was set for it; None: that of this plan's step.
             */
            stop_mm: number | null;
        };
        /** @description The depth that was felt and recorded at one step of the order of work. */
        RecordedDepthRequest: {
            /**
             * felt at
             * @description Where the tip stopped, from the reference point; the stop or deeper counts as reached.
             */
            depth_mm: number;
            /**
             * step
             * @description The step in the run sheet.
             */
            node: string;
            /**
             * worked to the stop
             * @description The stop that was set for it; None: that of this plan's step.
             * @default null
             */
            stop_mm?: number | null;
        };
        /** @description Somebody as the record names them. */
        RecordPerson: {
            /** @description Its own id. */
            id: string;
            /** @description Its name, for people. */
            name: string;
            /** @description In the programme; none for somebody who is not in it any more. */
            role: components["schemas"]["Role"] | null;
        };
        /** @description A record with the hash of its canonical text, by which a printed one is compared. */
        RecordShown: {
            /** @description SHA-256 of the record's canonical text; a printed record carries it. */
            hash: string;
            /** @description The record. */
            record: components["schemas"]["Record"];
        };
        /**
         * @description Which of two published sets of lengths the figures are from.
         * @enum {string}
         */
        ReferenceSet: "A" | "B";
        /** @description Canals of an approved version that are released after all. */
        ReleaseGivenRequest: {
            /** @description The canals, each once. */
            canals: string[];
        };
        /** @description A supervisor decided on the plan: every canal may be worked but these. */
        ReleasePayload: {
            /**
             * @description Which kind it is: it tells the members of a choice apart. (enum property replaced by openapi-typescript)
             * @enum {string}
             */
            kind: "release";
            /** @description Canals that are not released by it. */
            not_released: components["schemas"]["NotReleased"][];
        };
        /** @description A supervisor decided on the plan: every canal may be worked but these. */
        ReleasePayloadRequest: {
            /**
             * @description Which kind it is: it tells the members of a choice apart. (enum property replaced by openapi-typescript)
             * @enum {string}
             */
            kind: "release";
            /** @description Canals that are not released by it. */
            not_released: components["schemas"]["NotReleasedRequest"][];
        };
        /** @description One remark on one canal. The text is trimmed and has to say something. */
        RemarkGivenRequest: {
            /** @description The canal by its name; empty or null for the whole tooth. */
            canal: string;
            /** @description With an approval: this canal is not released, its partner neither. */
            returned?: boolean;
            /** @description The text. */
            text: string;
        };
        /** @description A stored remark, with its canal by name. */
        RemarkShown: {
            /** @description The canal by its name; empty or null for the whole tooth. */
            canal: string;
            /** @description The approval leaves this canal out. */
            returned: boolean;
            /** @description The text. */
            text: string;
        };
        /** @description Why an image's pixels are removed. */
        RemovalGivenRequest: {
            /** @description Of a closed set: a free text could hold the very name that has to go. */
            reason: components["schemas"]["RemovalReason"];
        };
        /**
         * @description Why an image was removed. A closed set: with a free text somebody would write down the name that has to go.
         * @enum {string}
         */
        RemovalReason: "names_somebody" | "not_of_this_case" | "not_usable";
        /** @description How long another link counts. */
        RenewalGivenRequest: {
            /**
             * @description The link ends after so many; 14 if nothing is said.
             * @default 14
             */
            days?: number;
        };
        /** @description The next visit begins. */
        ReopenPayload: {
            /** @description Canals that were found as they were left, or have not been worked yet; the others wait for a supervisor. */
            as_left: string[];
            /** @description What was looked at, canal by canal. */
            found: components["schemas"]["Found"][];
            /**
             * @description Which kind it is: it tells the members of a choice apart. (enum property replaced by openapi-typescript)
             * @enum {string}
             */
            kind: "reopen";
            /** @description In the clinic the dam is on; on the bench eyes and skin are protected. */
            protected: boolean;
            /** @description The licensed clinician who is in the room, in the clinic. */
            supervisor_id: string;
        };
        /** @description The next visit begins. */
        ReopenPayloadRequest: {
            /** @description Canals that were found as they were left, or have not been worked yet; the others wait for a supervisor. */
            as_left: string[];
            /**
             * @description What was looked at, canal by canal.
             * @default []
             */
            found?: components["schemas"]["FoundRequest"][];
            /**
             * @description Which kind it is: it tells the members of a choice apart. (enum property replaced by openapi-typescript)
             * @enum {string}
             */
            kind: "reopen";
            /**
             * @description In the clinic the dam is on; on the bench eyes and skin are protected.
             * @default false
             */
            protected?: boolean;
            /**
             * @description The licensed clinician who is in the room, in the clinic.
             * @default
             */
            supervisor_id?: string;
        };
        /** @description A plan is in force from here on. */
        ReplanPayload: {
            /**
             * @description Which kind it is: it tells the members of a choice apart. (enum property replaced by openapi-typescript)
             * @enum {string}
             */
            kind: "replan";
            /** @description Hash of the plan that was in force until now; the new plan's own hash where there was none. */
            replaces: string;
        };
        /** @description A plan is in force from here on. */
        ReplanPayloadRequest: {
            /**
             * @description Which kind it is: it tells the members of a choice apart. (enum property replaced by openapi-typescript)
             * @enum {string}
             */
            kind: "replan";
            /** @description Hash of the plan that was in force until now; the new plan's own hash where there was none. */
            replaces: string;
        };
        /** @description Where a webhook is to go on from. */
        ReplayGivenRequest: {
            /** @description `next` of a page of changes, or a message's `bookmark`: from there on; `0`: from the start; `last`: from now. */
            after: string;
        };
        /**
         * @description What the image shows around the root's end; it decides the set-back.
         * @enum {string}
         */
        Resorption: "none" | "bone" | "bone_and_root";
        /** @description Where one item comes to rest in the prepared canal. */
        Rest: {
            /** @description The same for the widest it may be within the standard's tolerance. */
            earliest_short_mm: number;
            /** @description Whether it goes as deep as it has to. */
            fits: boolean;
            /** @description Which kind it is: it tells the members of a choice apart. */
            kind: components["schemas"]["FillingKind"];
            /** @description Its name, for people. */
            name: string;
            /** @description Depth of its tip from the reference point. */
            rests_mm: number;
            /** @description What it means: fits, binds early, is loose and passes. */
            says: string;
            /** @description Distance from its tip to the canal's end. */
            short_mm: number;
        };
        /** @description A supervisor lets the work go on: one canal, or with no canal the tooth after an emergency. */
        ResumePayload: {
            /**
             * @description For the tooth: ids of the emergencies and corrections that the supervisor had seen. One that came later still
             *     halts the tooth. Empty: all are ended.
             */
            ends: string[];
            /** @description For the tooth: the work goes on, and irrigation stays with saline. */
            keep_saline: boolean;
            /**
             * @description Which kind it is: it tells the members of a choice apart. (enum property replaced by openapi-typescript)
             * @enum {string}
             */
            kind: "resume";
            /** @description Why. */
            reason: string;
        };
        /** @description A supervisor lets the work go on: one canal, or with no canal the tooth after an emergency. */
        ResumePayloadRequest: {
            /**
             * @description For the tooth: ids of the emergencies and corrections that the supervisor had seen. One that came later still
             *     halts the tooth. Empty: all are ended.
             * @default []
             */
            ends?: string[];
            /**
             * @description For the tooth: the work goes on, and irrigation stays with saline.
             * @default false
             */
            keep_saline?: boolean;
            /**
             * @description Which kind it is: it tells the members of a choice apart. (enum property replaced by openapi-typescript)
             * @enum {string}
             */
            kind: "resume";
            /** @description Why. */
            reason: string;
        };
        /** @description One canal as it was, and as it is after the work. */
        RevealedCanal: {
            /** @description Packed dust blocks it from this depth on; None: it is open. */
            block_mm: number | null;
            /** @description The canal by its name; empty or null for the whole tooth. */
            canal: string;
            /** @description A ledge at this depth stops all but a small hand instrument; None: there is none. */
            ledge_mm: number | null;
            /** @description After the work. */
            now: components["schemas"]["ProfilePoint"][];
            /** @description How much wider its end is than instruments at their stops would have left it. */
            over_wide_mm: number;
            /** @description Before anything was in it, reference point side first. */
            was: components["schemas"]["ProfilePoint"][];
        };
        /** @description A supervisor's decision on a submitted version. */
        ReviewGivenRequest: {
            /** @description With an approval: every caution of severity `stop` that was not let pass, by its name. */
            acknowledged?: components["schemas"]["NamedRequest"][];
            /** @description What the supervisor decided. */
            decision: components["schemas"]["Decision"];
            /**
             * Format: uuid
             * @description Made by the sender, so that sending again is harmless.
             */
            id?: string;
            /** @description A remark, or empty. */
            note?: string;
            /** @description What the supervisor measured beside the plan, to compare: the plan stays as it is. */
            own_lengths?: components["schemas"]["OwnLengthRequest"][];
            /** @description What is said of single canals. */
            remarks?: components["schemas"]["RemarkGivenRequest"][];
        };
        /** @description A stored decision on a version: who took it, when, and with which remarks. */
        ReviewShown: {
            /** @description What must be put right and was acknowledged by its name when it was approved. */
            acknowledged: components["schemas"]["Named"][];
            /** @description Which submission of the version it answers. */
            asked: number;
            /**
             * Format: date-time
             * @description When it was.
             */
            at: string;
            /** @description What the supervisor decided. */
            decision: components["schemas"]["Decision"];
            /**
             * Format: uuid
             * @description Its own id.
             */
            id: string;
            /** @description A remark, or empty. */
            note: string;
            /** @description What the supervisor measured beside the plan, to compare. */
            own_lengths: components["schemas"]["OwnLength"][];
            /** @description What is said of single canals. */
            remarks: components["schemas"]["RemarkShown"][];
            /** @description The supervisor; null: nobody yet. */
            supervisor: components["schemas"]["PersonRef"];
        };
        /** @description A stored withdrawal of an approval: who withdrew it, when and why. */
        RevocationShown: {
            /** @description Which submission of the version had been approved. */
            asked: number;
            /**
             * Format: date-time
             * @description When it was.
             */
            at: string;
            /** @description Who did it. */
            by: components["schemas"]["PersonRef"];
            /**
             * Format: uuid
             * @description Its own id.
             */
            id: string;
            /** @description Why. */
            reason: string;
        };
        /** @description The approval of the plan in force was withdrawn. */
        RevokedPayload: {
            /**
             * @description Which kind it is: it tells the members of a choice apart. (enum property replaced by openapi-typescript)
             * @enum {string}
             */
            kind: "revoked";
            /** @description Why. */
            reason: string;
        };
        /** @description The approval of the plan in force was withdrawn. */
        RevokedPayloadRequest: {
            /**
             * @description Which kind it is: it tells the members of a choice apart. (enum property replaced by openapi-typescript)
             * @enum {string}
             */
            kind: "revoked";
            /** @description Why. */
            reason: string;
        };
        /** @description Why an approval is withdrawn. */
        RevokeGivenRequest: {
            /**
             * Format: uuid
             * @description Made by the sender, so that sending again is harmless.
             */
            id?: string;
            /** @description Why. */
            reason: string;
        };
        /**
         * @description What a person is in a programme.
         * @enum {string}
         */
        Role: "student" | "supervisor" | "coordinator";
        /** @description What is charted of a root. */
        RootGivenRequest: {
            /** @description The canal that the others join, by its name; null: not said. */
            main_canal?: string | null;
            /** @description How the canals of the root run. */
            pattern: components["schemas"]["Pattern"];
        };
        /** @description A root: how its canals run. */
        RootInput: {
            /**
             * its main canal
             * @description Which canal goes to the terminus where two join: chosen by a person, never by list order.
             */
            main_canal: string | null;
            /**
             * root
             * @description Its name, for people.
             */
            name: string;
            /**
             * how its canals run
             * @description How the canals of the root run.
             */
            pattern: components["schemas"]["Pattern"];
        };
        /** @description A root: how its canals run. */
        RootInputRequest: {
            /**
             * its main canal
             * @description Which canal goes to the terminus where two join: chosen by a person, never by list order.
             * @default null
             */
            main_canal?: string | null;
            /**
             * root
             * @description Its name, for people.
             */
            name: string;
            /**
             * how its canals run
             * @description How the canals of the root run.
             * @default unknown
             */
            pattern?: components["schemas"]["Pattern"];
        };
        /**
         * @description How a number is rounded once it has been computed.
         * @enum {string}
         */
        Rounding: "none" | "half_mm_down" | "hundredth" | "hundredth_down";
        /** @description A figure the plan rests on. */
        RowUsed: {
            /** @description Which one it is, in a word that stays the same. */
            key: string;
            /** @description How it is known. */
            know: string;
            /** @description The programme put its own value in its place. */
            programme: boolean;
            /** @description Where it is from. */
            source: string;
            /** @description The unit. */
            unit: string;
            /** @description The value. */
            value: number;
        };
        /** @description Work that goes on. */
        RunningList: {
            /**
             * Format: uri
             * @description Address of the next page; null: this is the last.
             */
            next: string | null;
            /** @description Null: these pages are read forwards alone. */
            readonly previous: string | null;
            /** @description The rows of this page. */
            results: components["schemas"]["RunningShown"][];
        };
        /** @description Where the work on one case stands. */
        RunningShown: {
            /** @description The canals, each once. */
            canals: components["schemas"]["CanalSummary"][];
            /**
             * Format: uuid
             * @description Id of the case.
             */
            case_id: string;
            /**
             * Format: date-time
             * @description When something of it last changed.
             */
            changed_at: string;
            /** @description The visit was closed and waits for a supervisor's check. */
            check_due: boolean;
            /** @description Those that halt the tooth, the first one first. */
            emergencies: components["schemas"]["EmergencySummary"][];
            /** @description An emergency stopped the work. */
            halted: boolean;
            /** @description What has to be there before any canal is worked. */
            missing: components["schemas"]["Prerequisite"][];
            /** @description The step in the student's hand. */
            now: components["schemas"]["StepInHand"] | null;
            /** @description The licensed clinician in the room, in the clinic. */
            on_site: components["schemas"]["PersonRef"] | null;
            /** @description The alias of the patient. Never a real identity. */
            patient_alias: string;
            /** @description Of the plan that is worked. */
            plan_hash: string;
            /** @description Of the last event. */
            position: number;
            /** @description Training block, extracted tooth or clinic. */
            setting: components["schemas"]["Setting"];
            /** @description Seconds it has been in hand. */
            step_s: number | null;
            /** @description The student whose case it is. */
            student: components["schemas"]["PersonRef"];
            /** @description The supervisor who took over and works it now. */
            taken_over: components["schemas"]["PersonRef"] | null;
            /** @description The tooth. */
            tooth: components["schemas"]["ToothNames"];
            /** @description Seconds since a supervisor's sign-off is due. */
            waiting_s: number | null;
        };
        /** @description The step graph of one canal. */
        RunSheet: {
            /** @description The canal by its name; empty or null for the whole tooth. */
            canal: string;
            /** @description Steps, by their ids. */
            nodes: {
                [key: string]: components["schemas"]["Step"] | components["schemas"]["Ask"] | components["schemas"]["End"];
            };
            /**
             * @description Version of what this is written in.
             * @constant
             */
            schema_version: 1;
            /** @description The step it starts with, by its id. */
            start: string;
            /** @description None for a sheet that starts before anything was done. */
            walked_before: components["schemas"]["Walked"] | null;
        };
        /** @description The order of work of one canal. */
        RunSheetAnswer: {
            /** @description The canal by its name; empty or null for the whole tooth. */
            canal: string;
            /** @description What to know before the work. */
            cautions: components["schemas"]["Caution"][];
            /** @description Node ids in the order expected, loops walked as often as the technique expects. */
            expected_path: string[];
            /** @description The instruments. */
            instruments: components["schemas"]["InstrumentName"][];
            /** @description The length, and what it rests on. */
            length: components["schemas"]["Length"];
            /** @description The stops rest on an estimate and will be computed again. */
            provisional: boolean;
            /** @description The order of work, as a graph of steps. */
            run_sheet: components["schemas"]["RunSheet"];
            /** @description What is not in the order of work yet, and why; null: nothing. */
            withheld: components["schemas"]["Withheld"][];
        };
        /** @description One canal of a tooth to be planned. The whole tooth is needed: canals that join depend on each other. */
        RunSheetRequest: {
            /** @description The canal by its name; empty or null for the whole tooth. */
            canal: string;
            /** @description The plan. */
            plan: components["schemas"]["PlanRequest"];
        };
        /** @description How large a pixel is, and what that rests on. */
        Scale: {
            /** @description Millimetres from one pixel to the next, to the right; null: not known. */
            column_mm: number | null;
            /** @description What makes it better; empty where nothing does. */
            do: string;
            /** @description A code of what it rests on. */
            rests_on: string;
            /** @description Millimetres from one pixel to the next, downwards; null: not known. */
            row_mm: number | null;
            /** @description How much taller than wide a pixel is; 1 where nothing is known. */
            row_per_column: number;
            /** @description It in one sentence, for people. */
            says: string;
            /** @description One standard deviation, as a share of any length. */
            spread_share: number | null;
            /** @description How it is. */
            state: components["schemas"]["ScaleState"];
        };
        /**
         * @description * `calibrated`: Good at the depth of what it was calibrated on.
         *     * `estimated`: Corrected for a magnification that was assumed.
         *     * `at_detector`: Nothing corrected: the image is larger than the tooth.
         *     * `uncalibrated`: Only ratios and angles can be had.
         * @enum {string}
         */
        ScaleState: "calibrated" | "estimated" | "at_detector" | "uncalibrated";
        /**
         * @description What a key opens; each operation states the one it asks for.
         * @enum {string}
         */
        Scope: "cases:read" | "cases:write" | "plans:submit" | "reviews:write" | "events:write" | "images:read" | "images:write" | "people:read" | "export" | "webhooks";
        /** @description How often the descending series is worked until its smallest is at length. */
        SeriesPasses: {
            /** @description The number that is expected. */
            expected: number;
            /** @description Upper end. */
            high: number | null;
            /** @description Lower end. */
            low: number | null;
        };
        /** @description A stored service. */
        ServiceRef: {
            /**
             * Format: uuid
             * @description Its own id.
             */
            id: string;
            /** @description Its name, for people. */
            name: string;
        };
        /** @description The stored person who is signed in; nobody else is shown the user name. */
        SessionPerson: {
            /**
             * Format: uuid
             * @description Its own id.
             */
            id: string;
            /** @description Its name, for people. */
            name: string;
            /** @description The name to sign in with. */
            username: string;
        };
        /** @description Who is signed in, and every programme that they belong to: rows of several tables. */
        SessionShown: {
            /** @description The programmes that the person belongs to. */
            memberships: components["schemas"]["MembershipShown"][];
            /** @description The person. */
            person: components["schemas"]["SessionPerson"];
        };
        /**
         * @description * `block`: A training block with a moulded canal.
         * @enum {string}
         */
        Setting: "block" | "extracted" | "clinic";
        /** @description What becomes of a technique in one setting. */
        SettingTried: {
            /** @description Where a supervisor's sign-off is asked for, in order. */
            hold_points: string[];
            /** @description Keys, in order. */
            phases: string[];
            /** @description Training block, extracted tooth or clinic. */
            setting: components["schemas"]["Setting"];
            /** @description Of the order of work that was written for the check canal; every walk through it ends. */
            steps: number;
            /** @description What a plan would keep closed, and why. */
            withheld: string[];
        };
        /**
         * @description * `stop`: Withholds steps until it is put right, or a supervisor lets it pass with a reason where that may be done.
         * @enum {string}
         */
        Severity: "note" | "caution" | "stop";
        /** @description How two lines that lie over each other came apart when the tube moved. */
        ShiftRequest: {
            /** @description How far mesial the one line lies of the other in the first view; below 0 it lies distal. */
            first_mm: number;
            /** @description The same in the second view. */
            second_mm: number;
            /** @description Where the tube moved from the first view to the second. */
            tube: components["schemas"]["Way"];
        };
        /** @description A stop that depends on where another instrument stopped: `less_um` short of its last depth. */
        ShorterThan: {
            /** @description How much shorter, in whole micrometres. */
            less_um: number;
            /** @description The step, by its id in the run sheet. */
            node: string;
        };
        /**
         * @description Towards the cheek, towards the tongue, or not told by these views.
         * @enum {string}
         */
        Side: "buccal" | "lingual" | "cannot_tell";
        /** @description Name and password of somebody who signs in. */
        SignInRequest: {
            /** @description The password. */
            password: string;
            /** @description The name to sign in with. */
            username: string;
        };
        /**
         * @description What a supervisor says at a hold point.
         * @enum {string}
         */
        SignOffExit: "approved" | "returned";
        /** @description A supervisor's sign-off at a hold point. */
        SignOffPayload: {
            /** @description Approved although what the hold point asks for is not there; the reason says why. */
            despite_missing: boolean;
            /** @description How the step was left. */
            exit: components["schemas"]["SignOffExit"];
            /**
             * @description Which kind it is: it tells the members of a choice apart. (enum property replaced by openapi-typescript)
             * @enum {string}
             */
            kind: "sign_off";
            /** @description Given on the student's phone with a one-time code; recorded by the server alone. */
            on_site: boolean;
            /** @description Why. */
            reason: string;
            /** @description Id shared by the sign-offs that a supervisor gave for several canals at once. */
            together: string;
        };
        /** @description A supervisor's sign-off at a hold point. */
        SignOffPayloadRequest: {
            /**
             * @description Approved although what the hold point asks for is not there; the reason says why.
             * @default false
             */
            despite_missing?: boolean;
            /** @description How the step was left. */
            exit: components["schemas"]["SignOffExit"];
            /**
             * @description Which kind it is: it tells the members of a choice apart. (enum property replaced by openapi-typescript)
             * @enum {string}
             */
            kind: "sign_off";
            /**
             * @description Given on the student's phone with a one-time code; recorded by the server alone.
             * @default false
             */
            on_site?: boolean;
            /**
             * @description Why.
             * @default
             */
            reason?: string;
            /**
             * @description Id shared by the sign-offs that a supervisor gave for several canals at once.
             * @default
             */
            together?: string;
        };
        /** @description A supervisor's sign-off at a hold point. */
        SignOffRecord: {
            /**
             * Format: date-time
             * @description When it was.
             */
            at: string;
            /** @description The canal by its name; empty or null for the whole tooth. */
            canal: string;
            /** @description Approved although what the hold point asks for was not there. */
            despite_missing: boolean;
            /** @description Where a supervisor's sign-off is asked for; empty or null: nowhere. */
            hold_point: string;
            /** @description An image that it rested on was struck since, or put to another canal. */
            image_gone: boolean;
            /** @description It came where the order of work has it. */
            in_course: boolean;
            /** @description Given on the student's own phone, by a code of the supervisor's. */
            on_site: boolean;
            /** @description Position of the event in the case. */
            position: number;
            /** @description Why. */
            reason: string;
            /** @description What the supervisor said. */
            said: components["schemas"]["Decision"];
            /** @description The person's name. */
            who: components["schemas"]["RecordPerson"];
        };
        /** @description One final size that may be chosen, and what it would mean. */
        SizeOption: {
            /** @description Inside the advised range. */
            inside: boolean;
            /** @description Size by ISO 3630-1, in hundredths of a millimetre. */
            size: number;
            /** @description Strain at the outside of the bend, in per cent. */
            strain_pct: number | null;
            /** @description The wall that would be left, in millimetres; null: not known. */
            wall_left_mm: number | null;
            /**
             * @description Share of the canal's wall that a round preparation of this size reaches near the end; none where the wide
             *     diameter is not known.
             */
            wall_share: number | null;
        };
        /** @description Advised range of the final size, each bound with its reason. */
        SizeRange: {
            /** @description The smallest size that can be chosen. */
            least: number;
            /** @description In a wide canal it is below the least: the canal asks for a larger size than it can bear. */
            most: number;
            /** @description Every size that can be chosen, with what it would do. */
            options: components["schemas"]["SizeOption"][];
            /** @description None for a wide canal: a supervisor chooses. */
            proposed: number | null;
            /** @description Why the range is what it is. */
            reasons: components["schemas"]["SizeReason"][];
        };
        /** @description One reason for a bound of the range, or something told beside it. */
        SizeReason: {
            /** @description What the reason sets. */
            bound: components["schemas"]["ReasonBound"];
            /** @description Of our own: floor, narrow-end, first-binder, published-upper, curvature-cap, ... */
            code: string;
            /** @description How it is known. */
            know: string;
            /** @description Key of `rows_used`, or table and row. */
            row: string;
            /** @description It in one sentence, for people. */
            says: string;
            /** @description Size by ISO 3630-1, in hundredths of a millimetre. */
            size: number | null;
            /** @description Where it is from. */
            source: string;
        };
        /**
         * @description What a DICOM file said of its scale, as read: nothing is computed, nothing put right.
         *
         *     Pairs are row spacing, then column spacing [mm]. A value of zero or below was not said.
         */
        Spacing: {
            /** @description (0018,1114): distance source to detector by distance source to patient. */
            estimated_magnification: number | null;
            /** @description (0018,1164): at the front of the detector, never corrected for magnification. */
            imager_pixel_spacing_mm: [
                number,
                number
            ] | null;
            /** @description (0018,2010): of a scanned film. */
            nominal_scanned_pixel_spacing_mm: [
                number,
                number
            ] | null;
            /** @description (0028,0A02) */
            pixel_spacing_calibration_type: components["schemas"]["CalibrationType"] | null;
            /** @description (0028,0030) */
            pixel_spacing_mm: [
                number,
                number
            ] | null;
            /** @description (0018,1110) */
            source_to_detector_mm: number | null;
            /** @description (0018,1111) */
            source_to_patient_mm: number | null;
        };
        /** @description What the image file says of its pixels. DICOM names stand in `planning.radiograph.scale`. */
        SpacingFacts: {
            /** @description From one pixel to the next at the detector, not corrected for the magnification. */
            at_detector: components["schemas"]["PixelSpacing"] | null;
            /** @description What the file says that its spacing was corrected by; null: nothing. */
            calibration: components["schemas"]["Calibration"] | null;
            /** @description From one pixel to the next in the patient, as the file says. */
            in_patient: components["schemas"]["PixelSpacing"] | null;
            /** @description How many times larger than the tooth the image is, as the file estimates. */
            magnification: number | null;
            /** @description From one pixel to the next on a film that was scanned. */
            scanned: components["schemas"]["PixelSpacing"] | null;
        };
        /** @description What the image file says of its pixels. DICOM names stand in `planning.radiograph.scale`. */
        SpacingFactsRequest: {
            /**
             * @description From one pixel to the next at the detector, not corrected for the magnification.
             * @default null
             */
            at_detector?: components["schemas"]["PixelSpacingRequest"] | null;
            /**
             * @description What the file says that its spacing was corrected by; null: nothing.
             * @default null
             */
            calibration?: components["schemas"]["Calibration"] | null;
            /**
             * @description From one pixel to the next in the patient, as the file says.
             * @default null
             */
            in_patient?: components["schemas"]["PixelSpacingRequest"] | null;
            /**
             * @description How many times larger than the tooth the image is, as the file estimates.
             * @default null
             */
            magnification?: number | null;
            /**
             * @description From one pixel to the next on a film that was scanned.
             * @default null
             */
            scanned?: components["schemas"]["PixelSpacingRequest"] | null;
        };
        /** @description A point of the work to which canals come together. */
        Stage: {
            /** @description The canals, each once. */
            canals: string[];
            /** @description Images that are taken, each with the canals it shows. */
            exposures: components["schemas"]["Exposure"][];
            /** @description What a supervisor's sign-off is about; empty where none is asked for. */
            hold_point: string;
            /** @description The phase of the technique, by its key. */
            phase: string;
            /** @description Sign-offs by supervisors. */
            sign_offs: number;
            /** @description What it is called. */
            title: string;
        };
        /** @description One step for the hand, the eye or the supervisor. */
        Step: {
            /** @description What is done in the step. */
            action: components["schemas"]["Action"];
            /** @description To which step each way of leaving it leads. */
            exits: {
                [key: string]: string;
            };
            /** @description Where a supervisor's sign-off is asked for; empty or null: nowhere. */
            hold_point: string | null;
            /** @description Its own id. */
            id: string;
            /** @description Key of the instrument in the kit. */
            instrument: string | null;
            /** @description What the canal is rinsed with; null: nothing. */
            irrigant: string | null;
            /**
             * @description Which kind it is: it tells the members of a choice apart. (enum property replaced by openapi-typescript)
             * @enum {string}
             */
            kind: "do";
            /** @description The needle never goes deeper, in whole micrometres from the reference point; null: not told. */
            needle_at_most_um: number | null;
            /** @description The phase of the technique, by its key. */
            phase: string;
            /** @description One sentence: what to do and why. */
            say: string;
            /** @description Another step whose depth it stays short of; null: none. */
            shorter_than: components["schemas"]["ShorterThan"] | null;
            /** @description The stop, in whole micrometres from the reference point; null: none. */
            stop_um: number | null;
            /** @description How far the instrument is led in. */
            target: components["schemas"]["Target"] | null;
            /** @description Volume in millilitres; null: not told. */
            volume_ml: number | null;
            /** @description Canals that join this one, and how far each has to have come. */
            waits_for: components["schemas"]["WaitsFor"][];
        };
        /**
         * @description How a step compares with the plan.
         *     * `added`: Done in addition to what was expected: once more, to make room, to open the way again.
         *     * `left_out`: Expected and passed over.
         *     * `not_yet`: Expected and not done so far.
         * @enum {string}
         */
        StepComparison: "as_planned" | "added" | "left_out" | "not_yet";
        /** @description The step that is due, as its student may know it. */
        StepDue: {
            /** @description What is done in the step. */
            action: components["schemas"]["Action"];
            /** @description The canal by its name; empty or null for the whole tooth. */
            canal: string;
            /** @description Key in the kit. */
            instrument: string;
            /** @description How deep it goes is not known before: a prediction counts. */
            judged: boolean;
            /** @description The step in the canal's order of work. */
            node: string;
            /** @description What is said at the end. */
            say: string;
            /** @description The stop, in millimetres from the reference point; null: not known. */
            stop_mm: number;
        };
        /** @description The step that is due in a canal. */
        StepInHand: {
            /** @description What is done in the step. */
            action: components["schemas"]["Action"];
            /** @description The canal by its name; empty or null for the whole tooth. */
            canal: string;
            /** @description Written size, or empty. */
            instrument: string;
            /** @description The step, by its id in the run sheet. */
            node: string;
            /** @description Which time the step is worked, from 1. */
            pass_number: number;
            /** @description The phase of the technique, by its key. */
            phase: string;
        };
        /** @description A step was left. */
        StepPayloadKept: {
            /** @description How long the irrigant stayed, as the phone counted it; none where its clock could not be trusted. */
            contact_s: number | null;
            /** @description Where the tip stopped, in whole micrometres from the reference point. */
            depth_um: number | null;
            /** @description How the step was left. */
            exit: components["schemas"]["Exit"];
            /** @description The image that an image step took; it may still be on the phone. */
            image_id: string | null;
            /** @description What the canal is rinsed with; null: nothing. */
            irrigant: string | null;
            /**
             * @description Which kind it is: it tells the members of a choice apart. (enum property replaced by openapi-typescript)
             * @enum {string}
             */
            kind: "step";
            /** @description Why there is no image. An older phone sends neither; the hold point then says that the image is lacking. */
            no_image: components["schemas"]["NoImage"] | null;
            /** @description The stop that the screen showed. */
            stop_um: number | null;
            /** @description One exposure may show several canals: where no image of it is kept here, their steps share this id. */
            together: string;
            /** @description Volume in millilitres; null: not told. */
            volume_ml: number | null;
        };
        /** @description A step was left. */
        StepPayloadRequestKept: {
            /**
             * @description How long the irrigant stayed, as the phone counted it; none where its clock could not be trusted.
             * @default null
             */
            contact_s?: number | null;
            /**
             * @description Where the tip stopped, in whole micrometres from the reference point.
             * @default null
             */
            depth_um?: number | null;
            /** @description How the step was left. */
            exit: components["schemas"]["Exit"];
            /**
             * @description The image that an image step took; it may still be on the phone.
             * @default null
             */
            image_id?: string | null;
            /**
             * @description What the canal is rinsed with; null: nothing.
             * @default null
             */
            irrigant?: string | null;
            /**
             * @description Which kind it is: it tells the members of a choice apart. (enum property replaced by openapi-typescript)
             * @enum {string}
             */
            kind: "step";
            /**
             * @description Why there is no image. An older phone sends neither; the hold point then says that the image is lacking.
             * @default null
             */
            no_image?: components["schemas"]["NoImage"] | null;
            /**
             * @description The stop that the screen showed.
             * @default null
             */
            stop_um?: number | null;
            /**
             * @description One exposure may show several canals: where no image of it is kept here, their steps share this id.
             * @default
             */
            together?: string;
            /**
             * @description Volume in millilitres; null: not told.
             * @default null
             */
            volume_ml?: number | null;
        };
        /** @description One step: as planned, as done, or both. */
        StepRecord: {
            /** @description What is done in the step. */
            action: components["schemas"]["Action"];
            /** @description The depth that was felt, against the band that was expected. */
            against_band: components["schemas"]["Against"] | null;
            /** @description The canal is bent, and the estimate takes it as straight. */
            as_if_straight: boolean;
            /** @description What was done against what was planned. */
            comparison: components["schemas"]["StepComparison"];
            /** @description Where the tip stopped, as recorded. */
            depth_mm: number | null;
            /** @description Upper end, in millimetres. */
            high_mm: number | null;
            /** @description How it was left. */
            how: components["schemas"]["Exit"] | null;
            /** @description Its name: size and taper. */
            instrument: string | null;
            /** @description The band it was expected in when the plan was made; an estimate, never a target. */
            low_mm: number | null;
            /** @description The step, by its id in the run sheet. */
            node: string;
            /** @description Which time the step was worked, from 1. */
            pass_number: number;
            /** @description The phase of the technique, by its key. */
            phase: string;
            /** @description Its place in the timeline; None where it was not done. */
            position: number | null;
            /** @description The stop that was shown, else the planned one. */
            stop_mm: number | null;
            /** @description Number of the version. */
            version: number;
        };
        /** @description Where the stop of an instrument is set. */
        Stop: {
            /** @description The canal by its name; empty or null for the whole tooth. */
            canal: string;
            /** @description The stop, in millimetres from the reference point; null: not known. */
            stop_mm: number;
            /** @description How far the instrument is led in. */
            target: components["schemas"]["Target"];
            /** @description The name under which the canal's rationales have this stop. */
            why: string;
        };
        /** @description One instrument in one phase, and its stop in each canal where it is used there. */
        StopRow: {
            /** @description The instrument, by its key. */
            instrument: components["schemas"]["InstrumentName"];
            /** @description The phase of the technique, by its key. */
            phase: string;
            /** @description The stop in each canal. */
            stops: components["schemas"]["Stop"][];
        };
        /** @description One instrument bent at the canal's curve. */
        Strain: {
            /** @description Where the bend is when the tip stands at its stop. */
            diameter_mm: number;
            /** @description The instrument, by its key. */
            instrument: string;
            /** @description Of the curve that it is bent in; None in older plans. */
            radius_mm: number | null;
            /** @description How much the bend strains it, in a word. */
            strain_class: components["schemas"]["StrainClass"];
            /** @description Strain at the outside of the bend, in per cent. */
            strain_pct: number;
            /** @description Radius or place of the curve were not charted and are taken from the data tables. */
            taken: boolean;
        };
        /**
         * @description How much a bend strains an instrument that turns in it.
         * @enum {string}
         */
        StrainClass: "low" | "medium" | "high";
        /** @description Why a reading is struck. */
        StrikeGivenRequest: {
            /** @description Why. */
            why: components["schemas"]["StruckWhy"];
        };
        /**
         * @description A length, a junction or an image that was struck.
         * @enum {string}
         */
        StruckKind: "length" | "junction" | "image";
        /** @description A reading or an image of the canal counts no more. */
        StruckPayload: {
            /**
             * @description Which kind it is: it tells the members of a choice apart. (enum property replaced by openapi-typescript)
             * @enum {string}
             */
            kind: "struck";
            /** @description Of an image: the canal it counts in instead, empty for the whole tooth; None: it counts for nothing. */
            moved_to: string | null;
            /** @description Its id. */
            struck: string;
            /** @description Which thing it is about. */
            what: components["schemas"]["StruckKind"];
            /** @description Why. */
            why: components["schemas"]["StruckWhy"];
        };
        /** @description A reading or an image of the canal counts no more. */
        StruckPayloadRequest: {
            /**
             * @description Which kind it is: it tells the members of a choice apart. (enum property replaced by openapi-typescript)
             * @enum {string}
             */
            kind: "struck";
            /**
             * @description Of an image: the canal it counts in instead, empty for the whole tooth; None: it counts for nothing.
             * @default null
             */
            moved_to?: string | null;
            /** @description Its id. */
            struck: string;
            /** @description Which thing it is about. */
            what: components["schemas"]["StruckKind"];
            /** @description Why. */
            why: components["schemas"]["StruckWhy"];
        };
        /** @description A reading that was a mistake. It stays, and counts for nothing. */
        StruckReading: {
            /**
             * Format: date-time
             * @description When it was.
             */
            at: string;
            /** @description The canal by its name; empty or null for the whole tooth. */
            canal: string;
            /** @description What was read. */
            says: string;
            /**
             * Format: date-time
             * @description When it was taken.
             */
            taken_at: string;
            /** @description Who took it. */
            taken_by: components["schemas"]["RecordPerson"];
            /** @description The person's name. */
            who: components["schemas"]["RecordPerson"];
            /** @description Why. */
            why: components["schemas"]["StruckWhy"];
        };
        /** @description Three columns of a stored reading, shown as one object. */
        StruckShown: {
            /**
             * Format: date-time
             * @description When it was.
             */
            at: string;
            /** @description Who did it. */
            by: components["schemas"]["PersonRef"];
            /** @description Why. */
            why: components["schemas"]["StruckWhy"];
        };
        /**
         * @description Why a reading or an image no longer counts. A choice, not a text: into a text somebody might write a name.
         *     * `not_so`: It was not measured as it says; an image does not show what it was taken for.
         * @enum {string}
         */
        StruckWhy: "wrong_canal" | "mistyped" | "not_so";
        /** @description A stored person who supervises. */
        SupervisorShown: {
            /**
             * Format: uuid
             * @description Its own id.
             */
            id: string;
            /** @description Its name, for people. */
            name: string;
            /** @description One-time codes of theirs count on a student's phone. */
            signs_on_site: boolean;
        };
        /** @description An exported table: what a row is, its columns, and where its rows are. */
        TableShown: {
            /** @description In the order of the cells. */
            columns: components["schemas"]["ColumnShown"][];
            /** @description Address of the same rows as CSV (RFC 4180). */
            csv: string;
            /** @description What one row of it is. */
            meaning: string;
            /** @description As in its addresses. */
            name: string;
            /** @description Address of its first rows, each a line of JSON. */
            ndjson: string;
        };
        /** @description A supervisor works the case from here on. */
        TakeOverPayload: {
            /**
             * @description Which kind it is: it tells the members of a choice apart. (enum property replaced by openapi-typescript)
             * @enum {string}
             */
            kind: "take_over";
        };
        /** @description A supervisor works the case from here on. */
        TakeOverPayloadRequest: {
            /**
             * @description Which kind it is: it tells the members of a choice apart. (enum property replaced by openapi-typescript)
             * @enum {string}
             */
            kind: "take_over";
        };
        /** @description A canal's curve as it was tapped, orifice side first. */
        TappedCurveRequest: {
            /** @description On the straight coronal part. */
            axis: components["schemas"]["PointRequest"];
            /** @description The foramen. */
            end: components["schemas"]["PointRequest"];
            /** @description Where the canal leaves the axis of its coronal part. */
            leaves: components["schemas"]["PointRequest"];
            /**
             * @description On the curve, between where it leaves the axis and the end.
             * @default null
             */
            on_curve?: components["schemas"]["PointRequest"] | null;
            /**
             * @description The same curve's angle in a view at a right angle to this one.
             * @default null
             */
            other_view_deg?: number | null;
            /**
             * @description Where the curve ends and a straight part runs on to the foramen.
             * @default null
             */
            straight_again?: components["schemas"]["PointRequest"] | null;
        };
        /**
         * @description How far an instrument is led in: to its stop, or until it meets resistance.
         * @enum {string}
         */
        Target: "to_length" | "to_resistance";
        /** @description Practice to be set as a task. */
        TaskGivenRequest: {
            /**
             * @description The students' group, by its whole name; empty: all students of the programme.
             * @default
             */
            group?: string;
            /**
             * Format: uuid
             * @description Made by the sender, so that sending again is harmless.
             */
            id?: string;
            /** @description Key of the level. */
            level: string;
        };
        /** @description A stored task: one hidden canal, the same for all for whom it is set. */
        TaskShown: {
            /** @description How many students have begun it. */
            begun: number;
            /**
             * Format: date-time
             * @description When it was made.
             */
            created_at: string;
            /** @description How many of those have ended it. */
            ended: number;
            /**
             * Format: uuid
             * @description Your own exercise of it; null: not begun.
             */
            exercise_id: string | null;
            /** @description Empty: all students of the programme. */
            group: string;
            /**
             * Format: uuid
             * @description Its own id.
             */
            id: string;
            /** @description Key of the level. */
            level: string;
            /** @description The supervisor who set it. */
            set_by: components["schemas"]["PersonRef"];
            /**
             * Format: date-time
             * @description Null: it can be begun.
             */
            withdrawn_at: string | null;
        };
        /** @description A technique as a programme keeps it. */
        Technique: {
            /**
             * technique
             * @description Which one it is, in a word that stays the same.
             */
            key: string;
            /**
             * how it is known
             * @description How it is known.
             */
            know: string;
            /**
             * motions it is for
             * @description Motions it is written for; an instrument of another motion is refused.
             */
            motions: components["schemas"]["Motion"][];
            /**
             * technique's name
             * @description Its name, for people.
             */
            name: string;
            /**
             * phase
             * @description The phases, in order.
             */
            phases: components["schemas"]["Phase"][];
            /**
             * recapitulating size
             * @description The size that recapitulates.
             */
            recapitulate_size: number;
            /**
             * recapitulates with the final size
             * @description Step-back recapitulates with the final apical size instead of the small one.
             */
            recapitulate_with_final: boolean;
            /**
             * what it is
             * @description It in one sentence, for people.
             */
            says: string;
            /**
             * @description Version of what this is written in.
             * @constant
             */
            schema_version: 1;
            /**
             * sizes from glide path to series
             * @description The smallest of the series lies this many ISO sizes above the last glide-path size.
             */
            series_above_glide_path: number;
            /**
             * sizes in the series above its smallest
             * @description The largest of the series lies this many ISO sizes above the smallest.
             */
            series_sizes_up: number;
            /**
             * where it is from
             * @description Where it is from.
             */
            source: string;
        };
        /** @description A technique that can be used, and what it comes to in each setting. */
        TechniqueChecked: {
            /** @description The settings it is for. */
            settings: components["schemas"]["SettingTried"][];
            /** @description The technique. */
            technique: components["schemas"]["Technique"];
        };
        /** @description A technique to be added to a programme. */
        TechniqueGivenRequest: {
            /**
             * Format: uuid
             * @description Made by the sender, so that sending again is harmless.
             */
            id?: string;
            /** @description The technique. */
            technique?: components["schemas"]["TechniqueRequest"];
            /** @description TOML, in place of `technique`. */
            text?: string;
        };
        /** @description A technique as a programme keeps it. */
        TechniqueRequest: {
            /**
             * technique
             * @description Which one it is, in a word that stays the same.
             */
            key: string;
            /**
             * how it is known
             * @description How it is known.
             */
            know: string;
            /**
             * motions it is for
             * @description Motions it is written for; an instrument of another motion is refused.
             */
            motions: components["schemas"]["Motion"][];
            /**
             * technique's name
             * @description Its name, for people.
             */
            name: string;
            /**
             * phase
             * @description The phases, in order.
             */
            phases: components["schemas"]["PhaseRequest"][];
            /**
             * recapitulating size
             * @description The size that recapitulates.
             */
            recapitulate_size: number;
            /**
             * recapitulates with the final size
             * @description Step-back recapitulates with the final apical size instead of the small one.
             */
            recapitulate_with_final: boolean;
            /**
             * what it is
             * @description It in one sentence, for people.
             */
            says: string;
            /**
             * @description Version of what this is written in.
             * @default 1
             * @constant
             */
            schema_version?: 1;
            /**
             * sizes from glide path to series
             * @description The smallest of the series lies this many ISO sizes above the last glide-path size.
             */
            series_above_glide_path: number;
            /**
             * sizes in the series above its smallest
             * @description The largest of the series lies this many ISO sizes above the smallest.
             */
            series_sizes_up: number;
            /**
             * where it is from
             * @description Where it is from.
             */
            source: string;
        };
        /** @description The techniques provided with the planner. */
        Techniques: {
            /** @description Address of the next page; null: this is the last. */
            next: string | null;
            /** @description Address of the page before; null: this is the first. */
            previous: string | null;
            /** @description The rows of this page. */
            results: components["schemas"]["Technique"][];
        };
        /** @description A technique to choose from. */
        TechniqueShown: {
            /** @description Comes with the planner; otherwise it is the programme's own. */
            provided: boolean;
            /** @description The technique. */
            technique: components["schemas"]["Technique"];
        };
        /** @description The techniques that a programme may choose from. */
        TechniquesShown: {
            /** @description Address of the next page; null: this is the last. */
            next: string | null;
            /** @description Address of the page before; null: this is the first. */
            previous: string | null;
            /** @description The rows of this page. */
            results: components["schemas"]["TechniqueShown"][];
        };
        /** @description A technique as a file holds it. */
        TechniqueTextRequest: {
            /**
             * @description Of the file; it stands before what is wrong.
             * @default technique
             */
            name?: string;
            /** @description TOML, as the techniques provided are written. */
            text: string;
        };
        /** @description The teeth that can be planned. */
        Teeth: {
            /** @description Address of the next page; null: this is the last. */
            next: string | null;
            /** @description Address of the page before; null: this is the first. */
            previous: string | null;
            /** @description The rows of this page. */
            results: components["schemas"]["Tooth"][];
        };
        /**
         * @description What closed the tooth until the next visit.
         * @enum {string}
         */
        Temporary: "none" | "zinc_oxide" | "glass_ionomer" | "other";
        /** @description A message that somebody asked for, to see whether it comes. */
        TestMessage: {
            /** @description Which webhook it is of. */
            data: components["schemas"]["WebhookRef"];
            /**
             * Format: date-time
             * @description When it was sent.
             */
            timestamp: string;
            /**
             * @description It is of no change.
             * @constant
             */
            type: "test";
        };
        /** @description Two stored texts, sent as they are kept: this class describes them and encodes nothing. */
        TextsShown: {
            /** @description All the plan rests on, as it was then. */
            given: components["schemas"]["PlanInput"];
            /** @description The plan. */
            plan: components["schemas"]["Plan"];
        };
        /** @description One event, said plainly. What was taken back stays, marked. */
        TimelineEntry: {
            /**
             * Format: date-time
             * @description When the server had it.
             */
            at: string;
            /** @description Empty where it concerns the whole tooth. */
            canal: string;
            /**
             * Format: date-time
             * @description By the device's own clock, which may be wrong.
             */
            device_time: string;
            /** @description Id of the event. */
            event_id: string;
            /** @description Which kind it is: it tells the members of a choice apart. */
            kind: components["schemas"]["EventKind"];
            /** @description What of it could not be checked when it came in; empty where nothing. */
            not_checked_says: string;
            /** @description Why it moved nothing. */
            out_of_course: components["schemas"]["OutOfCourse"] | null;
            /** @description Why it came out of course, or empty. */
            out_of_course_says: string;
            /** @description Position of the event in the case. */
            position: number;
            /** @description It in one sentence, for people. */
            says: string;
            /** @description It was taken back. */
            undone: boolean;
            /** @description Number of the plan that was on the screen. */
            version: number;
            /** @description The person's name. */
            who: components["schemas"]["RecordPerson"];
        };
        /** @description What is published of a tooth. */
        Tooth: {
            /** @description Usual canals. Empty: charted one by one. */
            canals: components["schemas"]["CanalOnOffer"][];
            /** @description Mean length of the crown. */
            crown_mm: number | null;
            /** @description ISO 3950. */
            iso: string;
            /** @description Published lengths. */
            lengths: components["schemas"]["LengthReference"][];
            /** @description What to look for. */
            look_for: components["schemas"]["CanalOnOffer"][];
            /** @description Canals that most teeth of this kind have. */
            main_canals: components["schemas"]["MainCanal"][];
            /** @description Its name, for people. */
            name: string;
            /** @description What studies say of the whole tooth. */
            notes: components["schemas"]["Prevalence"][];
            /** @description As typed: UL6. */
            palmer: string;
            /** @description With the corner of its quadrant: ⎿6. */
            palmer_glyph: string;
            /** @description Primary teeth are charted, not planned. */
            primary: boolean;
            /** @description By the universal numbering. */
            universal: string;
        };
        /** @description A tooth as somebody writes it. */
        ToothNameRequest: {
            /** @description The tooth, in that notation. */
            designation: string;
            /**
             * @description Must be given: a designation alone is refused, with the teeth it could be.
             * @default null
             */
            notation?: components["schemas"]["Notation"] | null;
        };
        /** @description A tooth's name in every notation. */
        ToothNames: {
            /** @description By ISO 3950. */
            iso: string;
            /** @description Its name, for people. */
            name: string;
            /** @description By Palmer, in plain letters. */
            palmer: string;
            /** @description By Palmer, with its sign. */
            palmer_glyph: string;
            /** @description By the universal numbering. */
            universal: string;
        };
        /** @description What to lay out, left to right in order of first use. */
        TrayItem: {
            /** @description The canals, each once. */
            canals: string[];
            /** @description False for what may be needed only to make room or to open the way again. */
            expected: boolean;
            /** @description The instrument, by its key. */
            instrument: components["schemas"]["InstrumentName"];
            /** @description Its diameters from the tip upwards, as it is drawn. */
            outline: components["schemas"]["DiameterAt"][];
        };
        /** @description In which order instruments are taken up. */
        TrayOrder: {
            /** @description What differs. */
            changes: number;
            /** @description The steps, in order. */
            steps: components["schemas"]["TrayStep"][];
        };
        /** @description One taking-up of an instrument, and the canals it serves before it is put down. */
        TrayStep: {
            /** @description The canals, each once. */
            canals: string[];
            /** @description The instrument, by its key. */
            instrument: string;
            /** @description The phase of the technique, by its key. */
            phase: string;
        };
        /** @description Stored events, and where the work stands after them. */
        TreatmentShown: {
            /**
             * Format: uuid
             * @description The event that those of the answer came after, as asked for; null: they are all.
             */
            after_id: string | null;
            /** @description The canals, each once. */
            canals: components["schemas"]["CanalCourseShown"][];
            /** @description Null before a plan was approved. */
            course: components["schemas"]["CourseShown"] | null;
            /** @description What happened, in order. */
            events: components["schemas"]["EventShown"][];
            /** @description Of the last event; 0 where there is none. */
            position: number;
        };
        /** @description The hand went over to another canal. */
        TurnPayload: {
            /**
             * @description Which kind it is: it tells the members of a choice apart. (enum property replaced by openapi-typescript)
             * @enum {string}
             */
            kind: "turn";
        };
        /** @description The hand went over to another canal. */
        TurnPayloadRequest: {
            /**
             * @description Which kind it is: it tells the members of a choice apart. (enum property replaced by openapi-typescript)
             * @enum {string}
             */
            kind: "turn";
        };
        /** @description What two views of one root tell together. */
        TwoViewsRead: {
            /** @description The same with its interval; None where an angle came without one. */
            in_space: components["schemas"]["Between"] | null;
            /** @description None where no bends were given. */
            in_space_deg: number | null;
            /** @description Where the one line lies against the other; None where no shift was given. */
            one_is: components["schemas"]["Side"] | null;
            /** @description Why. */
            why: string;
        };
        /** @description Two views of one root. */
        TwoViewsRequest: {
            /**
             * @description The programme's own values in place of figures of the data tables, by key.
             * @default {}
             */
            thresholds?: {
                [key: string]: number;
            };
            /** @description What was measured in the two views. */
            views: components["schemas"]["ViewsRequest"];
        };
        /** @description The teller takes back an entry of their own on the canal. */
        UndoPayload: {
            /**
             * @description Which kind it is: it tells the members of a choice apart. (enum property replaced by openapi-typescript)
             * @enum {string}
             */
            kind: "undo";
            /** @description Id of that event. */
            undoes: string;
        };
        /** @description The teller takes back an entry of their own on the canal. */
        UndoPayloadRequest: {
            /**
             * @description Which kind it is: it tells the members of a choice apart. (enum property replaced by openapi-typescript)
             * @enum {string}
             */
            kind: "undo";
            /** @description Id of that event. */
            undoes: string;
        };
        /**
         * @description What the programme keeps the instrument for.
         *     * `hand`: Exploring, glide path, recapitulating, gauging, step-back.
         *     * `coronal`: Opening the coronal third, to its own stop.
         *     * `shaping`: The series of one taper that is taken to length.
         * @enum {string}
         */
        Use: "hand" | "coronal" | "shaping";
        /** @description A version of the plan to be made. */
        VersionGivenRequest: {
            /** @description What the person who plans chose. */
            choices: components["schemas"]["ChoicesRequest"];
            /**
             * Format: uuid
             * @description Made by the sender, so that sending again is harmless.
             */
            id?: string;
            /**
             * Format: uuid
             * @description Id of the kit.
             */
            kit_id: string;
            /** @description Key of a technique of the programme's list. */
            technique: string;
        };
        /** @description The versions of a case's plan, the last first. */
        VersionList: {
            /** @description Address of the next page; null: this is the last. */
            readonly next: string | null;
            /** @description Address of the page before; null: this is the first. */
            readonly previous: string | null;
            /** @description The rows of this page. */
            results: components["schemas"]["VersionListed"][];
        };
        /** @description A stored version with its decisions; whether it is stale follows from the case as it is now. */
        VersionListed: {
            /** @description Who made it. */
            author: components["schemas"]["PersonRef"];
            /** @description Number of the version whose approval holds for this one: nothing but lengths moved, by little. */
            carried_from: number | null;
            /**
             * Format: uuid
             * @description Id of the case.
             */
            case_id: string;
            /** @description Cautions that do not. */
            cautions: number;
            /**
             * Format: date-time
             * @description When it was made.
             */
            created_at: string;
            /**
             * Format: date-time
             * @description When it was decided on; null: not yet.
             */
            decided_at: string | null;
            /** @description SHA-256 of what was given and what came out. */
            hash: string;
            /**
             * Format: uuid
             * @description Its own id.
             */
            id: string;
            /** @description Of kit, technique, choices, final sizes and limits alone. */
            intent_hash: string;
            /**
             * Format: uuid
             * @description Id of the kit.
             */
            kit_id: string;
            /** @description Canals that the approval leaves out: those returned, and those that end in one with them. */
            not_released: string[];
            /** @description Counts from 1. */
            number: number;
            /** @description Version of the planner that made it. */
            planner_version: string;
            /** @description What supervisors decided on it. */
            reviews: components["schemas"]["ReviewShown"][];
            /** @description Approvals of this version that were withdrawn. */
            revocations: components["schemas"]["RevocationShown"][];
            /** @description The case has changed since this version was made. */
            stale: boolean;
            /** @description How it is. */
            state: components["schemas"]["PlanState"];
            /** @description Cautions that withhold steps. */
            stops: number;
            /**
             * Format: date-time
             * @description When it was submitted; null: not yet.
             */
            submitted_at: string | null;
            /** @description Key of the technique. */
            technique: string;
        };
        /** @description A version of the plan that was decided on or worked from. */
        VersionRecord: {
            /**
             * Format: date-time
             * @description When it was.
             */
            at: string;
            /** @description Who made it. */
            author: components["schemas"]["RecordPerson"];
            /** @description What supervisors decided on it. */
            decisions: components["schemas"]["DecisionRecord"][];
            /** @description SHA-256 of it, in hexadecimal. */
            hash: string;
            /** @description The kit. */
            kit: string;
            /** @description Counts from 1. */
            number: number;
            /** @description Where it stands now. */
            state: components["schemas"]["PlanState"];
            /** @description The technique. */
            technique: string;
        };
        /** @description A stored version, as much of it as one line of a list needs. */
        VersionRef: {
            /**
             * Format: uuid
             * @description Its own id.
             */
            id: string;
            /** @description Counts from 1. */
            number: number;
            /** @description How it is. */
            state: components["schemas"]["PlanState"];
        };
        /** @description A stored version with its decisions; on request with all that it was made from and all that it says. */
        VersionShown: {
            /** @description Who made it. */
            author: components["schemas"]["PersonRef"];
            /** @description Number of the version whose approval holds for this one: nothing but lengths moved, by little. */
            carried_from: number | null;
            /**
             * Format: uuid
             * @description Id of the case.
             */
            case_id: string;
            /** @description Cautions that do not. */
            cautions: number;
            /** @description What the person who plans chose. */
            choices?: components["schemas"]["Choices"];
            /**
             * Format: date-time
             * @description When it was made.
             */
            created_at: string;
            /**
             * Format: date-time
             * @description When it was decided on; null: not yet.
             */
            decided_at: string | null;
            /** @description All the plan rests on, as it was then. */
            given?: components["schemas"]["PlanInput"];
            /** @description SHA-256 of what was given and what came out. */
            hash: string;
            /**
             * Format: uuid
             * @description Its own id.
             */
            id: string;
            /** @description Of kit, technique, choices, final sizes and limits alone. */
            intent_hash: string;
            /**
             * Format: uuid
             * @description Id of the kit.
             */
            kit_id: string;
            /** @description Canals that the approval leaves out: those returned, and those that end in one with them. */
            not_released: string[];
            /** @description Counts from 1. */
            number: number;
            /** @description The plan. */
            plan?: components["schemas"]["Plan"];
            /** @description Version of the planner that made it. */
            planner_version: string;
            /** @description What supervisors decided on it. */
            reviews: components["schemas"]["ReviewShown"][];
            /** @description Approvals of this version that were withdrawn. */
            revocations: components["schemas"]["RevocationShown"][];
            /** @description The case has changed since this version was made. */
            stale: boolean;
            /** @description How it is. */
            state: components["schemas"]["PlanState"];
            /** @description Where the case's plan stands as a whole. */
            status: components["schemas"]["PlanStatus"];
            /** @description Cautions that withhold steps. */
            stops: number;
            /**
             * Format: date-time
             * @description When it was submitted; null: not yet.
             */
            submitted_at: string | null;
            /** @description Key of the technique. */
            technique: string;
            /** @description Address of `given` and `plan`: what lies there never changes. */
            readonly texts: string;
        };
        /** @description What two views of one root have in common. */
        ViewsRequest: {
            /**
             * @description One bend in two views; null: none was given.
             * @default null
             */
            bends?: components["schemas"]["BendsRequest"] | null;
            /**
             * @description How two lines came apart; null: none was given.
             * @default null
             */
            shift?: components["schemas"]["ShiftRequest"] | null;
        };
        /** @description One visit. */
        VisitRecord: {
            /** @description The access cavity was closed for the time until the next visit. */
            access_sealed: boolean | null;
            /** @description When the visit was closed; null: it is under way. */
            closed_at: string | null;
            /** @description Who closed it; null: it is under way. */
            closed_by: components["schemas"]["RecordPerson"] | null;
            /** @description A remark, or empty. */
            note: string;
            /** @description Counts from 1. */
            number: number;
            /** @description Licensed clinicians who were named as in the room. */
            on_site: components["schemas"]["RecordPerson"][];
            /**
             * Format: date-time
             * @description When it was opened.
             */
            opened_at: string;
            /** @description Who opened it. */
            opened_by: components["schemas"]["RecordPerson"];
        };
        /** @description Of the canal from orifice to end: an ellipse, and in its middle the round shape that instruments have left. */
        Volumes: {
            /** @description None where the natural widths are not known. */
            before_mm3: number | null;
            /** @description The master cone's part inside the canal. */
            cone_mm3: number | null;
            /** @description Volume of the prepared canal, in cubic millimetres. */
            prepared_mm3: number;
            /** @description The prepared volume less that of the cone. */
            to_fill_mm3: number;
        };
        /** @description A stored version that waits; how long it has waited follows from the time of asking. */
        WaitingShown: {
            /** @description What the supervisor is asked for. */
            asks: components["schemas"]["Asks"];
            /** @description The canals, each once. */
            canals: components["schemas"]["CanalPlanListed"][];
            /**
             * Format: uuid
             * @description Id of the case.
             */
            case_id: string;
            /** @description Number of cautions that withhold nothing. */
            cautions: number;
            /** @description Null for a training block: none is counted. */
            difficulty: components["schemas"]["Level"] | null;
            /** @description SHA-256 of it, in hexadecimal. */
            hash: string;
            /** @description Counts from 1. */
            number: number;
            /** @description The alias of the patient. Never a real identity. */
            patient_alias: string;
            /** @description Training block, extracted tooth or clinic. */
            setting: components["schemas"]["Setting"];
            /** @description The case has changed since: it cannot be approved as it is. */
            stale: boolean;
            /** @description Cautions that withhold steps. */
            stops: number;
            /** @description The student whose case it is. */
            student: components["schemas"]["PersonRef"];
            /**
             * Format: date-time
             * @description When it was submitted; null: not yet.
             */
            submitted_at: string;
            /** @description The supervisor; null: nobody yet. */
            supervisor: components["schemas"]["PersonRef"] | null;
            /** @description The tooth. */
            tooth: components["schemas"]["ToothNames"];
            /**
             * Format: uuid
             * @description Id of the version.
             */
            version_id: string;
            /** @description Seconds it has waited. */
            waiting_s: number;
        };
        /** @description How far another canal has to have come before this step is done. */
        WaitsFor: {
            /** @description The canal by its name; empty or null for the whole tooth. */
            canal: string;
            /** @description Or it stands at one of these steps. */
            nodes: string[];
            /** @description It stands in one of these phases, or is finished. */
            phases: string[];
            /** @description Why, in one sentence. */
            says: string;
        };
        /** @description What was walked before the sheet starts; the sheet's questions go on counting from there. */
        Walked: {
            /**
             * depths reached
             * @description Where an instrument stopped at every pass of a step; None where no depth was given.
             */
            depths_um: {
                [key: string]: (number | null)[];
            };
            /**
             * times come to
             * @description How often the walk came to each step.
             */
            passes: {
                [key: string]: number;
            };
        };
        /** @description What was walked before the sheet starts; the sheet's questions go on counting from there. */
        WalkedRequest: {
            /**
             * depths reached
             * @description Where an instrument stopped at every pass of a step; None where no depth was given.
             * @default {}
             */
            depths_um?: {
                [key: string]: (number | null)[];
            };
            /**
             * times come to
             * @description How often the walk came to each step.
             * @default {}
             */
            passes?: {
                [key: string]: number;
            };
        };
        /** @description The thinnest wall, measured on this tooth. */
        WallInput: {
            /**
             * from the end
             * @description Millimetres from the canal's end.
             */
            from_end_mm: number;
            /**
             * thickness
             * @description Thickness, in millimetres.
             */
            thickness_mm: number;
        };
        /** @description The thinnest wall, measured on this tooth. */
        WallInputRequest: {
            /**
             * from the end
             * @description Millimetres from the canal's end.
             */
            from_end_mm: number;
            /**
             * thickness
             * @description Thickness, in millimetres.
             */
            thickness_mm: number;
        };
        /** @description The thinnest wall of a canal before and after preparation. */
        WallLeft: {
            /** @description Thickness of the wall before preparation, in millimetres. */
            before_mm: number;
            /** @description Width of the canal there, in millimetres. */
            canal_mm: number;
            /** @description What is left if the preparation stays centred. */
            centred_mm: number;
            /** @description Level at which it is judged. */
            from_end_mm: number;
            /** @description How it is known. */
            know: string;
            /** @description Measured on this tooth; otherwise the published cautious value. */
            measured: boolean;
            /** @description Diameter after preparation, in millimetres. */
            prepared_mm: number;
            /** @description Where it is from. */
            source: string;
            /** @description What is left if it drifts to this side all the way. */
            worst_mm: number;
        };
        /** @description A supervisor asks to be shown something. */
        WantedPayload: {
            /**
             * @description Which kind it is: it tells the members of a choice apart. (enum property replaced by openapi-typescript)
             * @enum {string}
             */
            kind: "wanted";
            /** @description A remark, or empty. */
            note: string;
            /**
             * @description Which thing it is about.
             * @constant
             */
            what: "image";
        };
        /** @description A supervisor asks to be shown something. */
        WantedPayloadRequest: {
            /**
             * @description Which kind it is: it tells the members of a choice apart. (enum property replaced by openapi-typescript)
             * @enum {string}
             */
            kind: "wanted";
            /**
             * @description A remark, or empty.
             * @default
             */
            note?: string;
            /**
             * @description Which thing it is about.
             * @constant
             */
            what: "image";
        };
        /**
         * @description Towards the middle of the arch, or away from it.
         * @enum {string}
         */
        Way: "mesial" | "distal";
        /** @description A webhook to be made. */
        WebhookGivenRequest: {
            /** @description Begins with `https://`. */
            address: string;
            /**
             * @description `next` of a page of changes, or a message's `bookmark`: from there on; `0`: from the start; `last`: from now.
             * @default last
             */
            after?: string;
            /** @description Of these it is told; empty: of all. */
            kinds: components["schemas"]["FeedKind"][];
        };
        /** @description The programme's webhooks, as many of them as are shown to who asks. */
        WebhookList: {
            /** @description Address of the next page; null: this is the last. */
            readonly next: string | null;
            /** @description Address of the page before; null: this is the first. */
            readonly previous: string | null;
            /** @description The rows of this page. */
            results: components["schemas"]["WebhookShown"][];
        };
        /** @description The id of a stored webhook. */
        WebhookRef: {
            /**
             * Format: uuid
             * @description Its id.
             */
            webhook_id: string;
        };
        /** @description A stored webhook; never its secret. */
        WebhookShown: {
            /** @description Where messages are sent. */
            address: string;
            /**
             * Format: date-time
             * @description When it was made.
             */
            created_at: string;
            /**
             * Format: date-time
             * @description When the first of those was tried that was not taken; null: none.
             */
            failing_since: string | null;
            /**
             * Format: date-time
             * @description Null: it was not.
             */
            given_up_at: string | null;
            /**
             * Format: uuid
             * @description Its own id.
             */
            id: string;
            /** @description Of these it is told; empty: of all. */
            kinds: components["schemas"]["FeedKind"][];
            /** @description Who made it. */
            made_by: components["schemas"]["PersonRef"];
            /** @description Up to this position every change was sent, or waits to be. */
            reached: number;
            /** @description The ETag begins with it: If-Match takes it alone. */
            revision: number;
            /** @description Whose it is; null: the coordinator's. */
            service: components["schemas"]["ServiceRef"] | null;
            /** @description How it is. */
            state: components["schemas"]["WebhookState"];
            /** @description Messages that wait. */
            waiting: number;
        };
        /**
         * @description * `paused`: By whoever keeps it; goes on from where it was.
         *     * `given_up`: The receiver took nothing for two days, or said that it is gone (410). Set it active to go on.
         * @enum {string}
         */
        WebhookState: "active" | "paused" | "given_up";
        /**
         * @description Whether messages are sent, or wait.
         * @enum {string}
         */
        WebhookSwitch: "active" | "paused";
        /** @description A stored webhook with its secret, which is shown this once. */
        WebhookWithSecret: {
            /** @description By which messages are signed: `whsec_` and base64. */
            secret: string;
            /** @description As it is shown from now on. */
            webhook: components["schemas"]["WebhookShown"];
        };
        /** @description A canal's width at one level, measured or kept by the programme. */
        WidthInput: {
            /**
             * from the end
             * @description From where the preparation ends, at the working length.
             */
            from_end_mm: number;
            /**
             * narrow diameter
             * @description Narrower diameter, in millimetres.
             */
            narrow_mm: number;
            /**
             * wide diameter
             * @description None where the canal is round there.
             */
            wide_mm: number | null;
        };
        /** @description A canal's width at one level, measured or kept by the programme. */
        WidthInputRequest: {
            /**
             * from the end
             * @description From where the preparation ends, at the working length.
             */
            from_end_mm: number;
            /**
             * narrow diameter
             * @description Narrower diameter, in millimetres.
             */
            narrow_mm: number;
            /**
             * wide diameter
             * @description None where the canal is round there.
             * @default null
             */
            wide_mm?: number | null;
        };
        /** @description Widths of a canal that a programme plans with. */
        WidthsGivenRequest: {
            /** @description From the end upwards. */
            widths: components["schemas"]["WidthInputRequest"][];
        };
        /** @description Widths of canals that a programme plans with. */
        WidthsListed: {
            /** @description Address of the next page; null: this is the last. */
            next: string | null;
            /** @description Address of the page before; null: this is the first. */
            previous: string | null;
            /** @description The rows of this page. */
            results: components["schemas"]["WidthsShown"][];
        };
        /** @description How wide a canal is taken to be in the programme, in place of the published widths. */
        WidthsShown: {
            /** @description The canal by its name; empty or null for the whole tooth. */
            canal: string;
            /** @description ISO 3950; stands for the same tooth of the other side too. */
            tooth: string;
            /** @description From the end upwards. */
            widths: components["schemas"]["WidthInput"][];
        };
        /** @description What is not in the order of work yet, and why. */
        Withheld: {
            /** @description Which one it is, in a word that stays the same. */
            code: string;
            /** @description The first phase that is withheld. */
            from_phase: string;
            /** @description It in one sentence, for people. */
            says: string;
        };
        /** @description Plans that wait for a supervisor. */
        WorkList: {
            /**
             * Format: uri
             * @description Address of the next page; null: this is the last.
             */
            next: string | null;
            /** @description Null: these pages are read forwards alone. */
            readonly previous: string | null;
            /** @description The rows of this page. */
            results: components["schemas"]["WaitingShown"][];
        };
    };
    responses: {
        /** @description - `not-understood`: Data that has not the shape of what was asked for, in one place or several. */
        "400.not-understood": {
            headers: {
                /** @description Names the request. Tell it to whoever looks after the server. */
                "X-Request-Id"?: string;
                [name: string]: unknown;
            };
            content: {
                "application/problem+json": components["schemas"]["Problem"] & {
                    /** @enum {unknown} */
                    type?: "/api/v1/problems/not-understood";
                };
            };
        };
        /**
         * @description - `not-understood`: Data that has not the shape of what was asked for, in one place or several.
         *     - `parse-error`: A body or a header that cannot be read.
         */
        "400.not-understood.parse-error": {
            headers: {
                /** @description Names the request. Tell it to whoever looks after the server. */
                "X-Request-Id"?: string;
                [name: string]: unknown;
            };
            content: {
                "application/problem+json": components["schemas"]["Problem"] & {
                    /** @enum {unknown} */
                    type?: "/api/v1/problems/not-understood" | "/api/v1/problems/parse-error";
                };
            };
        };
        /** @description - `key-refused`: An access key that does not count: unknown, ended or revoked. */
        "401.key-refused": {
            headers: {
                /** @description How to sign in, and with which scope. */
                "WWW-Authenticate"?: string;
                /** @description Names the request. Tell it to whoever looks after the server. */
                "X-Request-Id"?: string;
                [name: string]: unknown;
            };
            content: {
                "application/problem+json": components["schemas"]["Problem"] & {
                    /** @enum {unknown} */
                    type?: "/api/v1/problems/key-refused";
                };
            };
        };
        /**
         * @description - `key-refused`: An access key that does not count: unknown, ended or revoked.
         *     - `not-authenticated`: Nobody is signed in.
         */
        "401.key-refused.not-authenticated": {
            headers: {
                /** @description How to sign in, and with which scope. */
                "WWW-Authenticate"?: string;
                /** @description Names the request. Tell it to whoever looks after the server. */
                "X-Request-Id"?: string;
                [name: string]: unknown;
            };
            content: {
                "application/problem+json": components["schemas"]["Problem"] & {
                    /** @enum {unknown} */
                    type?: "/api/v1/problems/key-refused" | "/api/v1/problems/not-authenticated";
                };
            };
        };
        /**
         * @description - `key-refused`: An access key that does not count: unknown, ended or revoked.
         *     - `sign-in-refused`: The name or the password is wrong.
         */
        "401.key-refused.sign-in-refused": {
            headers: {
                /** @description How to sign in, and with which scope. */
                "WWW-Authenticate"?: string;
                /** @description Names the request. Tell it to whoever looks after the server. */
                "X-Request-Id"?: string;
                [name: string]: unknown;
            };
            content: {
                "application/problem+json": components["schemas"]["Problem"] & {
                    /** @enum {unknown} */
                    type?: "/api/v1/problems/key-refused" | "/api/v1/problems/sign-in-refused";
                };
            };
        };
        /** @description - `key-opens-not`: No key opens this. */
        "403.key-opens-not": {
            headers: {
                /** @description How to sign in, and with which scope. */
                "WWW-Authenticate"?: string;
                /** @description Names the request. Tell it to whoever looks after the server. */
                "X-Request-Id"?: string;
                [name: string]: unknown;
            };
            content: {
                "application/problem+json": components["schemas"]["Problem"] & {
                    /** @enum {unknown} */
                    type?: "/api/v1/problems/key-opens-not";
                };
            };
        };
        /**
         * @description - `key-opens-not`: No key opens this.
         *     - `not-allowed`: Is there, and not for this person or service.
         */
        "403.key-opens-not.not-allowed": {
            headers: {
                /** @description How to sign in, and with which scope. */
                "WWW-Authenticate"?: string;
                /** @description Names the request. Tell it to whoever looks after the server. */
                "X-Request-Id"?: string;
                [name: string]: unknown;
            };
            content: {
                "application/problem+json": components["schemas"]["Problem"] & {
                    /** @enum {unknown} */
                    type?: "/api/v1/problems/key-opens-not" | "/api/v1/problems/not-allowed";
                };
            };
        };
        /**
         * @description - `key-opens-not`: No key opens this.
         *     - `not-allowed`: Is there, and not for this person or service.
         *     - `token-missing`: A change by a session came without the token of the page's cookie.
         */
        "403.key-opens-not.not-allowed.token-missing": {
            headers: {
                /** @description How to sign in, and with which scope. */
                "WWW-Authenticate"?: string;
                /** @description Names the request. Tell it to whoever looks after the server. */
                "X-Request-Id"?: string;
                [name: string]: unknown;
            };
            content: {
                "application/problem+json": components["schemas"]["Problem"] & {
                    /** @enum {unknown} */
                    type?: "/api/v1/problems/key-opens-not" | "/api/v1/problems/not-allowed" | "/api/v1/problems/token-missing";
                };
            };
        };
        /**
         * @description - `key-opens-not`: No key opens this.
         *     - `token-missing`: A change by a session came without the token of the page's cookie.
         */
        "403.key-opens-not.token-missing": {
            headers: {
                /** @description How to sign in, and with which scope. */
                "WWW-Authenticate"?: string;
                /** @description Names the request. Tell it to whoever looks after the server. */
                "X-Request-Id"?: string;
                [name: string]: unknown;
            };
            content: {
                "application/problem+json": components["schemas"]["Problem"] & {
                    /** @enum {unknown} */
                    type?: "/api/v1/problems/key-opens-not" | "/api/v1/problems/token-missing";
                };
            };
        };
        /**
         * @description - `not-allowed`: Is there, and not for this person or service.
         *     - `scope-missing`: The key has not the scope that this needs.
         */
        "403.not-allowed.scope-missing": {
            headers: {
                /** @description How to sign in, and with which scope. */
                "WWW-Authenticate"?: string;
                /** @description Names the request. Tell it to whoever looks after the server. */
                "X-Request-Id"?: string;
                [name: string]: unknown;
            };
            content: {
                "application/problem+json": components["schemas"]["Problem"] & {
                    /** @enum {unknown} */
                    type?: "/api/v1/problems/not-allowed" | "/api/v1/problems/scope-missing";
                };
            };
        };
        /**
         * @description - `not-allowed`: Is there, and not for this person or service.
         *     - `scope-missing`: The key has not the scope that this needs.
         *     - `token-missing`: A change by a session came without the token of the page's cookie.
         */
        "403.not-allowed.scope-missing.token-missing": {
            headers: {
                /** @description How to sign in, and with which scope. */
                "WWW-Authenticate"?: string;
                /** @description Names the request. Tell it to whoever looks after the server. */
                "X-Request-Id"?: string;
                [name: string]: unknown;
            };
            content: {
                "application/problem+json": components["schemas"]["Problem"] & {
                    /** @enum {unknown} */
                    type?: "/api/v1/problems/not-allowed" | "/api/v1/problems/scope-missing" | "/api/v1/problems/token-missing";
                };
            };
        };
        /** @description - `scope-missing`: The key has not the scope that this needs. */
        "403.scope-missing": {
            headers: {
                /** @description How to sign in, and with which scope. */
                "WWW-Authenticate"?: string;
                /** @description Names the request. Tell it to whoever looks after the server. */
                "X-Request-Id"?: string;
                [name: string]: unknown;
            };
            content: {
                "application/problem+json": components["schemas"]["Problem"] & {
                    /** @enum {unknown} */
                    type?: "/api/v1/problems/scope-missing";
                };
            };
        };
        /** @description - `token-missing`: A change by a session came without the token of the page's cookie. */
        "403.token-missing": {
            headers: {
                /** @description How to sign in, and with which scope. */
                "WWW-Authenticate"?: string;
                /** @description Names the request. Tell it to whoever looks after the server. */
                "X-Request-Id"?: string;
                [name: string]: unknown;
            };
            content: {
                "application/problem+json": components["schemas"]["Problem"] & {
                    /** @enum {unknown} */
                    type?: "/api/v1/problems/token-missing";
                };
            };
        };
        /** @description - `not-found`: Does not exist, or belongs to another programme or another student: the two are not told apart. */
        "404.not-found": {
            headers: {
                /** @description Names the request. Tell it to whoever looks after the server. */
                "X-Request-Id"?: string;
                [name: string]: unknown;
            };
            content: {
                "application/problem+json": components["schemas"]["Problem"] & {
                    /** @enum {unknown} */
                    type?: "/api/v1/problems/not-found";
                };
            };
        };
        /** @description - `body-too-slow`: What was sent did not arrive in time. */
        "408.body-too-slow": {
            headers: {
                /** @description Names the request. Tell it to whoever looks after the server. */
                "X-Request-Id"?: string;
                [name: string]: unknown;
            };
            content: {
                "application/problem+json": components["schemas"]["Problem"] & {
                    /** @enum {unknown} */
                    type?: "/api/v1/problems/body-too-slow";
                };
            };
        };
        /** @description - `canal-in-use`: Something was measured or done in the canal, so it stays in the record. */
        "409.canal-in-use": {
            headers: {
                /** @description Names the request. Tell it to whoever looks after the server. */
                "X-Request-Id"?: string;
                [name: string]: unknown;
            };
            content: {
                "application/problem+json": components["schemas"]["Problem"] & {
                    /** @enum {unknown} */
                    type?: "/api/v1/problems/canal-in-use";
                };
            };
        };
        /** @description - `conflict`: At odds with how things stand. */
        "409.conflict": {
            headers: {
                /** @description Names the request. Tell it to whoever looks after the server. */
                "X-Request-Id"?: string;
                [name: string]: unknown;
            };
            content: {
                "application/problem+json": components["schemas"]["Problem"] & {
                    /** @enum {unknown} */
                    type?: "/api/v1/problems/conflict";
                };
            };
        };
        /**
         * @description - `conflict`: At odds with how things stand.
         *     - `id-used-differently`: An id of the sender's was used before for something else.
         *     - `still-under-way`: The first request with this `Idempotency-Key` is not answered yet.
         */
        "409.conflict.id-used-differently.still-under-way": {
            headers: {
                /** @description Names the request. Tell it to whoever looks after the server. */
                "X-Request-Id"?: string;
                [name: string]: unknown;
            };
            content: {
                "application/problem+json": components["schemas"]["Problem"] & {
                    /** @enum {unknown} */
                    type?: "/api/v1/problems/conflict" | "/api/v1/problems/id-used-differently" | "/api/v1/problems/still-under-way";
                };
            };
        };
        /**
         * @description - `conflict`: At odds with how things stand.
         *     - `not-of-this-feed`: Nothing, or another change, stands where a reader of the feed says it has read to: a server was restored.
         */
        "409.conflict.not-of-this-feed": {
            headers: {
                /** @description Names the request. Tell it to whoever looks after the server. */
                "X-Request-Id"?: string;
                [name: string]: unknown;
            };
            content: {
                "application/problem+json": components["schemas"]["Problem"] & {
                    /** @enum {unknown} */
                    type?: "/api/v1/problems/conflict" | "/api/v1/problems/not-of-this-feed";
                };
            };
        };
        /**
         * @description - `conflict`: At odds with how things stand.
         *     - `plan-stale`: The case has changed since the plan was made.
         *     - `still-under-way`: The first request with this `Idempotency-Key` is not answered yet.
         */
        "409.conflict.plan-stale.still-under-way": {
            headers: {
                /** @description Names the request. Tell it to whoever looks after the server. */
                "X-Request-Id"?: string;
                [name: string]: unknown;
            };
            content: {
                "application/problem+json": components["schemas"]["Problem"] & {
                    /** @enum {unknown} */
                    type?: "/api/v1/problems/conflict" | "/api/v1/problems/plan-stale" | "/api/v1/problems/still-under-way";
                };
            };
        };
        /**
         * @description - `conflict`: At odds with how things stand.
         *     - `still-under-way`: The first request with this `Idempotency-Key` is not answered yet.
         */
        "409.conflict.still-under-way": {
            headers: {
                /** @description Names the request. Tell it to whoever looks after the server. */
                "X-Request-Id"?: string;
                [name: string]: unknown;
            };
            content: {
                "application/problem+json": components["schemas"]["Problem"] & {
                    /** @enum {unknown} */
                    type?: "/api/v1/problems/conflict" | "/api/v1/problems/still-under-way";
                };
            };
        };
        /** @description - `external-id-taken`: The service knows another thing of this kind by the external id. */
        "409.external-id-taken": {
            headers: {
                /** @description Names the request. Tell it to whoever looks after the server. */
                "X-Request-Id"?: string;
                [name: string]: unknown;
            };
            content: {
                "application/problem+json": components["schemas"]["Problem"] & {
                    /** @enum {unknown} */
                    type?: "/api/v1/problems/external-id-taken";
                };
            };
        };
        /**
         * @description - `external-id-taken`: The service knows another thing of this kind by the external id.
         *     - `setting-fixed`: Lengths rest on the setting of the case.
         */
        "409.external-id-taken.setting-fixed": {
            headers: {
                /** @description Names the request. Tell it to whoever looks after the server. */
                "X-Request-Id"?: string;
                [name: string]: unknown;
            };
            content: {
                "application/problem+json": components["schemas"]["Problem"] & {
                    /** @enum {unknown} */
                    type?: "/api/v1/problems/external-id-taken" | "/api/v1/problems/setting-fixed";
                };
            };
        };
        /**
         * @description - `hold-point-answered`: The canal does not wait for a sign-off at this step, or waits no more.
         *     - `still-under-way`: The first request with this `Idempotency-Key` is not answered yet.
         */
        "409.hold-point-answered.still-under-way": {
            headers: {
                /** @description Names the request. Tell it to whoever looks after the server. */
                "X-Request-Id"?: string;
                [name: string]: unknown;
            };
            content: {
                "application/problem+json": components["schemas"]["Problem"] & {
                    /** @enum {unknown} */
                    type?: "/api/v1/problems/hold-point-answered" | "/api/v1/problems/still-under-way";
                };
            };
        };
        /** @description - `id-used-differently`: An id of the sender's was used before for something else. */
        "409.id-used-differently": {
            headers: {
                /** @description Names the request. Tell it to whoever looks after the server. */
                "X-Request-Id"?: string;
                [name: string]: unknown;
            };
            content: {
                "application/problem+json": components["schemas"]["Problem"] & {
                    /** @enum {unknown} */
                    type?: "/api/v1/problems/id-used-differently";
                };
            };
        };
        /**
         * @description - `id-used-differently`: An id of the sender's was used before for something else.
         *     - `offset-mismatch`: A part of an upload does not begin where the last one ended.
         */
        "409.id-used-differently.offset-mismatch": {
            headers: {
                /** @description Names the request. Tell it to whoever looks after the server. */
                "X-Request-Id"?: string;
                [name: string]: unknown;
            };
            content: {
                "application/problem+json": components["schemas"]["Problem"] & {
                    /** @enum {unknown} */
                    type?: "/api/v1/problems/id-used-differently" | "/api/v1/problems/offset-mismatch";
                };
            };
        };
        /**
         * @description - `id-used-differently`: An id of the sender's was used before for something else.
         *     - `still-under-way`: The first request with this `Idempotency-Key` is not answered yet.
         */
        "409.id-used-differently.still-under-way": {
            headers: {
                /** @description Names the request. Tell it to whoever looks after the server. */
                "X-Request-Id"?: string;
                [name: string]: unknown;
            };
            content: {
                "application/problem+json": components["schemas"]["Problem"] & {
                    /** @enum {unknown} */
                    type?: "/api/v1/problems/id-used-differently" | "/api/v1/problems/still-under-way";
                };
            };
        };
        /**
         * @description - `id-used-differently`: An id of the sender's was used before for something else.
         *     - `still-under-way`: The first request with this `Idempotency-Key` is not answered yet.
         *     - `taken-already`: Something of that name is there already.
         */
        "409.id-used-differently.still-under-way.taken-already": {
            headers: {
                /** @description Names the request. Tell it to whoever looks after the server. */
                "X-Request-Id"?: string;
                [name: string]: unknown;
            };
            content: {
                "application/problem+json": components["schemas"]["Problem"] & {
                    /** @enum {unknown} */
                    type?: "/api/v1/problems/id-used-differently" | "/api/v1/problems/still-under-way" | "/api/v1/problems/taken-already";
                };
            };
        };
        /**
         * @description - `move-not-possible`: A plan that is where it is cannot be moved so.
         *     - `still-under-way`: The first request with this `Idempotency-Key` is not answered yet.
         */
        "409.move-not-possible.still-under-way": {
            headers: {
                /** @description Names the request. Tell it to whoever looks after the server. */
                "X-Request-Id"?: string;
                [name: string]: unknown;
            };
            content: {
                "application/problem+json": components["schemas"]["Problem"] & {
                    /** @enum {unknown} */
                    type?: "/api/v1/problems/move-not-possible" | "/api/v1/problems/still-under-way";
                };
            };
        };
        /** @description - `not-of-this-feed`: Nothing, or another change, stands where a reader of the feed says it has read to: a server was restored. */
        "409.not-of-this-feed": {
            headers: {
                /** @description Names the request. Tell it to whoever looks after the server. */
                "X-Request-Id"?: string;
                [name: string]: unknown;
            };
            content: {
                "application/problem+json": components["schemas"]["Problem"] & {
                    /** @enum {unknown} */
                    type?: "/api/v1/problems/not-of-this-feed";
                };
            };
        };
        /**
         * @description - `not-of-this-feed`: Nothing, or another change, stands where a reader of the feed says it has read to: a server was restored.
         *     - `still-under-way`: The first request with this `Idempotency-Key` is not answered yet.
         */
        "409.not-of-this-feed.still-under-way": {
            headers: {
                /** @description Names the request. Tell it to whoever looks after the server. */
                "X-Request-Id"?: string;
                [name: string]: unknown;
            };
            content: {
                "application/problem+json": components["schemas"]["Problem"] & {
                    /** @enum {unknown} */
                    type?: "/api/v1/problems/not-of-this-feed" | "/api/v1/problems/still-under-way";
                };
            };
        };
        /** @description - `setting-fixed`: Lengths rest on the setting of the case. */
        "409.setting-fixed": {
            headers: {
                /** @description Names the request. Tell it to whoever looks after the server. */
                "X-Request-Id"?: string;
                [name: string]: unknown;
            };
            content: {
                "application/problem+json": components["schemas"]["Problem"] & {
                    /** @enum {unknown} */
                    type?: "/api/v1/problems/setting-fixed";
                };
            };
        };
        /** @description - `still-under-way`: The first request with this `Idempotency-Key` is not answered yet. */
        "409.still-under-way": {
            headers: {
                /** @description Names the request. Tell it to whoever looks after the server. */
                "X-Request-Id"?: string;
                [name: string]: unknown;
            };
            content: {
                "application/problem+json": components["schemas"]["Problem"] & {
                    /** @enum {unknown} */
                    type?: "/api/v1/problems/still-under-way";
                };
            };
        };
        /** @description - `taken-already`: Something of that name is there already. */
        "409.taken-already": {
            headers: {
                /** @description Names the request. Tell it to whoever looks after the server. */
                "X-Request-Id"?: string;
                [name: string]: unknown;
            };
            content: {
                "application/problem+json": components["schemas"]["Problem"] & {
                    /** @enum {unknown} */
                    type?: "/api/v1/problems/taken-already";
                };
            };
        };
        /** @description - `image-removed`: Was here once, and is not taken again under this id. */
        "410.image-removed": {
            headers: {
                /** @description Names the request. Tell it to whoever looks after the server. */
                "X-Request-Id"?: string;
                [name: string]: unknown;
            };
            content: {
                "application/problem+json": components["schemas"]["Problem"] & {
                    /** @enum {unknown} */
                    type?: "/api/v1/problems/image-removed";
                };
            };
        };
        /** @description - `invitation-refused`: A link to join that does not count: unknown, used, ended or withdrawn. */
        "410.invitation-refused": {
            headers: {
                /** @description Names the request. Tell it to whoever looks after the server. */
                "X-Request-Id"?: string;
                [name: string]: unknown;
            };
            content: {
                "application/problem+json": components["schemas"]["Problem"] & {
                    /** @enum {unknown} */
                    type?: "/api/v1/problems/invitation-refused";
                };
            };
        };
        /** @description - `changed-since`: What If-Match names is not the present state. */
        "412.changed-since": {
            headers: {
                /** @description Names the request. Tell it to whoever looks after the server. */
                "X-Request-Id"?: string;
                [name: string]: unknown;
            };
            content: {
                "application/problem+json": components["schemas"]["Problem"] & {
                    /** @enum {unknown} */
                    type?: "/api/v1/problems/changed-since";
                };
            };
        };
        /** @description - `body-too-long`: More bytes than are taken here. */
        "413.body-too-long": {
            headers: {
                /** @description Names the request. Tell it to whoever looks after the server. */
                "X-Request-Id"?: string;
                [name: string]: unknown;
            };
            content: {
                "application/problem+json": components["schemas"]["Problem"] & {
                    /** @enum {unknown} */
                    type?: "/api/v1/problems/body-too-long";
                };
            };
        };
        /** @description - `unsupported-media-type`: A body of a kind that is not taken here. */
        "415.unsupported-media-type": {
            headers: {
                /** @description Names the request. Tell it to whoever looks after the server. */
                "X-Request-Id"?: string;
                [name: string]: unknown;
            };
            content: {
                "application/problem+json": components["schemas"]["Problem"] & {
                    /** @enum {unknown} */
                    type?: "/api/v1/problems/unsupported-media-type";
                };
            };
        };
        /**
         * @description - `act-refused`: What cannot be done at this point of an exercise.
         *     - `idempotency-key-used-differently`: The `Idempotency-Key` came before, within a day, with another body, to another address or on another condition.
         *     - `out-of-bounds`: A number lies outside the bounds of its quantity.
         */
        "422.act-refused.idempotency-key-used-differently.out-of-bounds": {
            headers: {
                /** @description Names the request. Tell it to whoever looks after the server. */
                "X-Request-Id"?: string;
                [name: string]: unknown;
            };
            content: {
                "application/problem+json": components["schemas"]["Problem"] & {
                    /** @enum {unknown} */
                    type?: "/api/v1/problems/act-refused" | "/api/v1/problems/idempotency-key-used-differently" | "/api/v1/problems/out-of-bounds";
                };
            };
        };
        /**
         * @description - `canals-do-not-fit`: Canals, roots or names that do not go together.
         *     - `not-usable`: Good data that cannot be used here.
         *     - `out-of-bounds`: A number lies outside the bounds of its quantity.
         */
        "422.canals-do-not-fit.not-usable.out-of-bounds": {
            headers: {
                /** @description Names the request. Tell it to whoever looks after the server. */
                "X-Request-Id"?: string;
                [name: string]: unknown;
            };
            content: {
                "application/problem+json": components["schemas"]["Problem"] & {
                    /** @enum {unknown} */
                    type?: "/api/v1/problems/canals-do-not-fit" | "/api/v1/problems/not-usable" | "/api/v1/problems/out-of-bounds";
                };
            };
        };
        /**
         * @description - `choice-not-possible`: A choice for a canal that its findings do not allow.
         *     - `out-of-bounds`: A number lies outside the bounds of its quantity.
         */
        "422.choice-not-possible.out-of-bounds": {
            headers: {
                /** @description Names the request. Tell it to whoever looks after the server. */
                "X-Request-Id"?: string;
                [name: string]: unknown;
            };
            content: {
                "application/problem+json": components["schemas"]["Problem"] & {
                    /** @enum {unknown} */
                    type?: "/api/v1/problems/choice-not-possible" | "/api/v1/problems/out-of-bounds";
                };
            };
        };
        /**
         * @description - `choice-not-possible`: A choice for a canal that its findings do not allow.
         *     - `out-of-bounds`: A number lies outside the bounds of its quantity.
         *     - `points-do-not-fit`: Points from which no curve can be measured.
         */
        "422.choice-not-possible.out-of-bounds.points-do-not-fit": {
            headers: {
                /** @description Names the request. Tell it to whoever looks after the server. */
                "X-Request-Id"?: string;
                [name: string]: unknown;
            };
            content: {
                "application/problem+json": components["schemas"]["Problem"] & {
                    /** @enum {unknown} */
                    type?: "/api/v1/problems/choice-not-possible" | "/api/v1/problems/out-of-bounds" | "/api/v1/problems/points-do-not-fit";
                };
            };
        };
        /**
         * @description - `choice-not-possible`: A choice for a canal that its findings do not allow.
         *     - `out-of-bounds`: A number lies outside the bounds of its quantity.
         *     - `views-do-not-fit`: Two views that cannot be read together.
         */
        "422.choice-not-possible.out-of-bounds.views-do-not-fit": {
            headers: {
                /** @description Names the request. Tell it to whoever looks after the server. */
                "X-Request-Id"?: string;
                [name: string]: unknown;
            };
            content: {
                "application/problem+json": components["schemas"]["Problem"] & {
                    /** @enum {unknown} */
                    type?: "/api/v1/problems/choice-not-possible" | "/api/v1/problems/out-of-bounds" | "/api/v1/problems/views-do-not-fit";
                };
            };
        };
        /** @description - `code-refused`: A one-time code that does not count. */
        "422.code-refused": {
            headers: {
                /** @description Names the request. Tell it to whoever looks after the server. */
                "X-Request-Id"?: string;
                [name: string]: unknown;
            };
            content: {
                "application/problem+json": components["schemas"]["Problem"] & {
                    /** @enum {unknown} */
                    type?: "/api/v1/problems/code-refused";
                };
            };
        };
        /**
         * @description - `code-refused`: A one-time code that does not count.
         *     - `idempotency-key-used-differently`: The `Idempotency-Key` came before, within a day, with another body, to another address or on another condition.
         *     - `not-usable`: Good data that cannot be used here.
         */
        "422.code-refused.idempotency-key-used-differently.not-usable": {
            headers: {
                /** @description Names the request. Tell it to whoever looks after the server. */
                "X-Request-Id"?: string;
                [name: string]: unknown;
            };
            content: {
                "application/problem+json": components["schemas"]["Problem"] & {
                    /** @enum {unknown} */
                    type?: "/api/v1/problems/code-refused" | "/api/v1/problems/idempotency-key-used-differently" | "/api/v1/problems/not-usable";
                };
            };
        };
        /** @description - `external-id-refused`: What was sent as an external id is none, or looks like something of a person. */
        "422.external-id-refused": {
            headers: {
                /** @description Names the request. Tell it to whoever looks after the server. */
                "X-Request-Id"?: string;
                [name: string]: unknown;
            };
            content: {
                "application/problem+json": components["schemas"]["Problem"] & {
                    /** @enum {unknown} */
                    type?: "/api/v1/problems/external-id-refused";
                };
            };
        };
        /** @description - `idempotency-key-used-differently`: The `Idempotency-Key` came before, within a day, with another body, to another address or on another condition. */
        "422.idempotency-key-used-differently": {
            headers: {
                /** @description Names the request. Tell it to whoever looks after the server. */
                "X-Request-Id"?: string;
                [name: string]: unknown;
            };
            content: {
                "application/problem+json": components["schemas"]["Problem"] & {
                    /** @enum {unknown} */
                    type?: "/api/v1/problems/idempotency-key-used-differently";
                };
            };
        };
        /**
         * @description - `idempotency-key-used-differently`: The `Idempotency-Key` came before, within a day, with another body, to another address or on another condition.
         *     - `no-such-canal`: The plan has no canal of that name.
         *     - `not-usable`: Good data that cannot be used here.
         */
        "422.idempotency-key-used-differently.no-such-canal.not-usable": {
            headers: {
                /** @description Names the request. Tell it to whoever looks after the server. */
                "X-Request-Id"?: string;
                [name: string]: unknown;
            };
            content: {
                "application/problem+json": components["schemas"]["Problem"] & {
                    /** @enum {unknown} */
                    type?: "/api/v1/problems/idempotency-key-used-differently" | "/api/v1/problems/no-such-canal" | "/api/v1/problems/not-usable";
                };
            };
        };
        /**
         * @description - `idempotency-key-used-differently`: The `Idempotency-Key` came before, within a day, with another body, to another address or on another condition.
         *     - `not-usable`: Good data that cannot be used here.
         */
        "422.idempotency-key-used-differently.not-usable": {
            headers: {
                /** @description Names the request. Tell it to whoever looks after the server. */
                "X-Request-Id"?: string;
                [name: string]: unknown;
            };
            content: {
                "application/problem+json": components["schemas"]["Problem"] & {
                    /** @enum {unknown} */
                    type?: "/api/v1/problems/idempotency-key-used-differently" | "/api/v1/problems/not-usable";
                };
            };
        };
        /**
         * @description - `idempotency-key-used-differently`: The `Idempotency-Key` came before, within a day, with another body, to another address or on another condition.
         *     - `not-usable`: Good data that cannot be used here.
         *     - `out-of-bounds`: A number lies outside the bounds of its quantity.
         */
        "422.idempotency-key-used-differently.not-usable.out-of-bounds": {
            headers: {
                /** @description Names the request. Tell it to whoever looks after the server. */
                "X-Request-Id"?: string;
                [name: string]: unknown;
            };
            content: {
                "application/problem+json": components["schemas"]["Problem"] & {
                    /** @enum {unknown} */
                    type?: "/api/v1/problems/idempotency-key-used-differently" | "/api/v1/problems/not-usable" | "/api/v1/problems/out-of-bounds";
                };
            };
        };
        /**
         * @description - `idempotency-key-used-differently`: The `Idempotency-Key` came before, within a day, with another body, to another address or on another condition.
         *     - `not-usable`: Good data that cannot be used here.
         *     - `unknown-level`: There is no such level of practice.
         */
        "422.idempotency-key-used-differently.not-usable.unknown-level": {
            headers: {
                /** @description Names the request. Tell it to whoever looks after the server. */
                "X-Request-Id"?: string;
                [name: string]: unknown;
            };
            content: {
                "application/problem+json": components["schemas"]["Problem"] & {
                    /** @enum {unknown} */
                    type?: "/api/v1/problems/idempotency-key-used-differently" | "/api/v1/problems/not-usable" | "/api/v1/problems/unknown-level";
                };
            };
        };
        /**
         * @description - `idempotency-key-used-differently`: The `Idempotency-Key` came before, within a day, with another body, to another address or on another condition.
         *     - `nothing-said`: A plan is returned without a word.
         */
        "422.idempotency-key-used-differently.nothing-said": {
            headers: {
                /** @description Names the request. Tell it to whoever looks after the server. */
                "X-Request-Id"?: string;
                [name: string]: unknown;
            };
            content: {
                "application/problem+json": components["schemas"]["Problem"] & {
                    /** @enum {unknown} */
                    type?: "/api/v1/problems/idempotency-key-used-differently" | "/api/v1/problems/nothing-said";
                };
            };
        };
        /**
         * @description - `idempotency-key-used-differently`: The `Idempotency-Key` came before, within a day, with another body, to another address or on another condition.
         *     - `unknown-level`: There is no such level of practice.
         */
        "422.idempotency-key-used-differently.unknown-level": {
            headers: {
                /** @description Names the request. Tell it to whoever looks after the server. */
                "X-Request-Id"?: string;
                [name: string]: unknown;
            };
            content: {
                "application/problem+json": components["schemas"]["Problem"] & {
                    /** @enum {unknown} */
                    type?: "/api/v1/problems/idempotency-key-used-differently" | "/api/v1/problems/unknown-level";
                };
            };
        };
        /** @description - `not-usable`: Good data that cannot be used here. */
        "422.not-usable": {
            headers: {
                /** @description Names the request. Tell it to whoever looks after the server. */
                "X-Request-Id"?: string;
                [name: string]: unknown;
            };
            content: {
                "application/problem+json": components["schemas"]["Problem"] & {
                    /** @enum {unknown} */
                    type?: "/api/v1/problems/not-usable";
                };
            };
        };
        /**
         * @description - `not-usable`: Good data that cannot be used here.
         *     - `out-of-bounds`: A number lies outside the bounds of its quantity.
         */
        "422.not-usable.out-of-bounds": {
            headers: {
                /** @description Names the request. Tell it to whoever looks after the server. */
                "X-Request-Id"?: string;
                [name: string]: unknown;
            };
            content: {
                "application/problem+json": components["schemas"]["Problem"] & {
                    /** @enum {unknown} */
                    type?: "/api/v1/problems/not-usable" | "/api/v1/problems/out-of-bounds";
                };
            };
        };
        /**
         * @description - `not-usable`: Good data that cannot be used here.
         *     - `password-wrong`: The password that is asked for once more is not that of who is signed in.
         */
        "422.not-usable.password-wrong": {
            headers: {
                /** @description Names the request. Tell it to whoever looks after the server. */
                "X-Request-Id"?: string;
                [name: string]: unknown;
            };
            content: {
                "application/problem+json": components["schemas"]["Problem"] & {
                    /** @enum {unknown} */
                    type?: "/api/v1/problems/not-usable" | "/api/v1/problems/password-wrong";
                };
            };
        };
        /**
         * @description - `not-usable`: Good data that cannot be used here.
         *     - `views-do-not-fit`: Two views that cannot be read together.
         */
        "422.not-usable.views-do-not-fit": {
            headers: {
                /** @description Names the request. Tell it to whoever looks after the server. */
                "X-Request-Id"?: string;
                [name: string]: unknown;
            };
            content: {
                "application/problem+json": components["schemas"]["Problem"] & {
                    /** @enum {unknown} */
                    type?: "/api/v1/problems/not-usable" | "/api/v1/problems/views-do-not-fit";
                };
            };
        };
        /**
         * @description - `notation-missing`: A designation that does not say its notation.
         *     - `unknown-tooth`: There is no such tooth in that notation.
         */
        "422.notation-missing.unknown-tooth": {
            headers: {
                /** @description Names the request. Tell it to whoever looks after the server. */
                "X-Request-Id"?: string;
                [name: string]: unknown;
            };
            content: {
                "application/problem+json": components["schemas"]["Problem"] & {
                    /** @enum {unknown} */
                    type?: "/api/v1/problems/notation-missing" | "/api/v1/problems/unknown-tooth";
                };
            };
        };
        /** @description - `password-wrong`: The password that is asked for once more is not that of who is signed in. */
        "422.password-wrong": {
            headers: {
                /** @description Names the request. Tell it to whoever looks after the server. */
                "X-Request-Id"?: string;
                [name: string]: unknown;
            };
            content: {
                "application/problem+json": components["schemas"]["Problem"] & {
                    /** @enum {unknown} */
                    type?: "/api/v1/problems/password-wrong";
                };
            };
        };
        /** @description - `technique-not-usable`: A technique that breaks a rule of techniques, or that is not there. */
        "422.technique-not-usable": {
            headers: {
                /** @description Names the request. Tell it to whoever looks after the server. */
                "X-Request-Id"?: string;
                [name: string]: unknown;
            };
            content: {
                "application/problem+json": components["schemas"]["Problem"] & {
                    /** @enum {unknown} */
                    type?: "/api/v1/problems/technique-not-usable";
                };
            };
        };
        /** @description - `precondition-missing`: A change that rests on what was seen came without If-Match. */
        "428.precondition-missing": {
            headers: {
                /** @description Names the request. Tell it to whoever looks after the server. */
                "X-Request-Id"?: string;
                [name: string]: unknown;
            };
            content: {
                "application/problem+json": components["schemas"]["Problem"] & {
                    /** @enum {unknown} */
                    type?: "/api/v1/problems/precondition-missing";
                };
            };
        };
        /** @description - `too-many-tries`: Names, passwords or codes were wrong too often. */
        "429.too-many-tries": {
            headers: {
                /** @description What is left (`r`) of each rate, and the seconds until all of it is back (`t`). */
                RateLimit?: string;
                /** @description Each rate by name: how many (`q`) in how many seconds (`w`). */
                "RateLimit-Policy"?: string;
                /** @description Seconds to wait. */
                "Retry-After"?: number;
                /** @description Names the request. Tell it to whoever looks after the server. */
                "X-Request-Id"?: string;
                [name: string]: unknown;
            };
            content: {
                "application/problem+json": components["schemas"]["Problem"] & {
                    /** @enum {unknown} */
                    type?: "/api/v1/problems/too-many-tries";
                };
            };
        };
        /**
         * @description - `too-many-tries`: Names, passwords or codes were wrong too often.
         *     - `too-often`: That was asked for too often.
         */
        "429.too-many-tries.too-often": {
            headers: {
                /** @description What is left (`r`) of each rate, and the seconds until all of it is back (`t`). */
                RateLimit?: string;
                /** @description Each rate by name: how many (`q`) in how many seconds (`w`). */
                "RateLimit-Policy"?: string;
                /** @description Seconds to wait. */
                "Retry-After"?: number;
                /** @description Names the request. Tell it to whoever looks after the server. */
                "X-Request-Id"?: string;
                [name: string]: unknown;
            };
            content: {
                "application/problem+json": components["schemas"]["Problem"] & {
                    /** @enum {unknown} */
                    type?: "/api/v1/problems/too-many-tries" | "/api/v1/problems/too-often";
                };
            };
        };
        /** @description - `too-often`: That was asked for too often. */
        "429.too-often": {
            headers: {
                /** @description What is left (`r`) of each rate, and the seconds until all of it is back (`t`). */
                RateLimit?: string;
                /** @description Each rate by name: how many (`q`) in how many seconds (`w`). */
                "RateLimit-Policy"?: string;
                /** @description Seconds to wait. */
                "Retry-After"?: number;
                /** @description Names the request. Tell it to whoever looks after the server. */
                "X-Request-Id"?: string;
                [name: string]: unknown;
            };
            content: {
                "application/problem+json": components["schemas"]["Problem"] & {
                    /** @enum {unknown} */
                    type?: "/api/v1/problems/too-often";
                };
            };
        };
        /** @description - `busy`: The server works for others; nothing was kept. */
        "503.busy": {
            headers: {
                /** @description Seconds to wait. */
                "Retry-After"?: number;
                /** @description Names the request. Tell it to whoever looks after the server. */
                "X-Request-Id"?: string;
                [name: string]: unknown;
            };
            content: {
                "application/problem+json": components["schemas"]["Problem"] & {
                    /** @enum {unknown} */
                    type?: "/api/v1/problems/busy";
                };
            };
        };
        /**
         * @description - `busy`: The server works for others; nothing was kept.
         *     - `store-away`: The images' storage does not answer, or takes nothing more.
         */
        "503.busy.store-away": {
            headers: {
                /** @description Seconds to wait. */
                "Retry-After"?: number;
                /** @description Names the request. Tell it to whoever looks after the server. */
                "X-Request-Id"?: string;
                [name: string]: unknown;
            };
            content: {
                "application/problem+json": components["schemas"]["Problem"] & {
                    /** @enum {unknown} */
                    type?: "/api/v1/problems/busy" | "/api/v1/problems/store-away";
                };
            };
        };
        /**
         * @description - `busy`: The server works for others; nothing was kept.
         *     - `store-away`: The images' storage does not answer, or takes nothing more.
         *     - `took-too-long`: That took longer than one request may.
         */
        "503.busy.store-away.took-too-long": {
            headers: {
                /** @description Seconds to wait. */
                "Retry-After"?: number;
                /** @description Names the request. Tell it to whoever looks after the server. */
                "X-Request-Id"?: string;
                [name: string]: unknown;
            };
            content: {
                "application/problem+json": components["schemas"]["Problem"] & {
                    /** @enum {unknown} */
                    type?: "/api/v1/problems/busy" | "/api/v1/problems/store-away" | "/api/v1/problems/took-too-long";
                };
            };
        };
        /**
         * @description - `busy`: The server works for others; nothing was kept.
         *     - `took-too-long`: That took longer than one request may.
         */
        "503.busy.took-too-long": {
            headers: {
                /** @description Seconds to wait. */
                "Retry-After"?: number;
                /** @description Names the request. Tell it to whoever looks after the server. */
                "X-Request-Id"?: string;
                [name: string]: unknown;
            };
            content: {
                "application/problem+json": components["schemas"]["Problem"] & {
                    /** @enum {unknown} */
                    type?: "/api/v1/problems/busy" | "/api/v1/problems/took-too-long";
                };
            };
        };
        /** @description Any other refusal, with the reason and the way out. */
        "any-other": {
            headers: {
                /** @description Names the request. Tell it to whoever looks after the server. */
                "X-Request-Id"?: string;
                [name: string]: unknown;
            };
            content: {
                "application/problem+json": components["schemas"]["Problem"];
            };
        };
    };
    parameters: never;
    requestBodies: never;
    headers: never;
    pathItems: never;
}
export type $defs = Record<string, never>;
export interface operations {
    canal_retrieve: {
        parameters: {
            query?: {
                /** @description Only these fields, with a comma between two; of a list, in each of its rows. */
                fields?: ("id" | "name" | "root" | "reference_point" | "length" | "length_problem" | "junction" | "readings" | "junctions" | "finding" | "resorption" | "orifice_mm" | "curvature_deg" | "curve_start_mm" | "apex_mm" | "first_binder_size" | "curve_radius_mm" | "curve_from_end_mm" | "wall" | "widths")[];
            };
            header?: {
                /** @description The ETag seen last, several of them, or `*`: 304 where nothing has changed (RFC 9110, 13.1.2). */
                "If-None-Match"?: string;
            };
            path: {
                canal_id: string;
            };
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            200: {
                headers: {
                    /** @description Changes with all that is shown; If-None-Match takes it, and If-Match where a change asks for it. */
                    ETag?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["CanalShown"];
                };
            };
            /** @description What is shown is what the ETag of If-None-Match is of. No body. */
            304: {
                headers: {
                    [name: string]: unknown;
                };
                content?: never;
            };
            400: components["responses"]["400.not-understood"];
            401: components["responses"]["401.key-refused.not-authenticated"];
            403: components["responses"]["403.scope-missing"];
            404: components["responses"]["404.not-found"];
            412: components["responses"]["412.changed-since"];
            429: components["responses"]["429.too-often"];
            503: components["responses"]["503.busy"];
            default: components["responses"]["any-other"];
        };
    };
    canal_destroy: {
        parameters: {
            query?: never;
            header?: {
                /** @description The ETag of the case as you saw it; refused if it changed. */
                "If-Match"?: string;
            };
            path: {
                canal_id: string;
            };
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            /** @description No response body */
            204: {
                headers: {
                    [name: string]: unknown;
                };
                content?: never;
            };
            400: components["responses"]["400.not-understood"];
            401: components["responses"]["401.key-refused.not-authenticated"];
            403: components["responses"]["403.not-allowed.scope-missing.token-missing"];
            404: components["responses"]["404.not-found"];
            409: components["responses"]["409.canal-in-use"];
            412: components["responses"]["412.changed-since"];
            429: components["responses"]["429.too-often"];
            503: components["responses"]["503.busy"];
            default: components["responses"]["any-other"];
        };
    };
    canal_update: {
        parameters: {
            query?: never;
            header?: {
                /** @description The ETag of the case as you saw it; refused if it changed. */
                "If-Match"?: string;
            };
            path: {
                canal_id: string;
            };
            cookie?: never;
        };
        requestBody?: {
            content: {
                "application/json": components["schemas"]["PatchedCanalChangesRequest"];
            };
        };
        responses: {
            200: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["CanalShown"];
                };
            };
            400: components["responses"]["400.not-understood.parse-error"];
            401: components["responses"]["401.key-refused.not-authenticated"];
            403: components["responses"]["403.not-allowed.scope-missing.token-missing"];
            404: components["responses"]["404.not-found"];
            408: components["responses"]["408.body-too-slow"];
            409: components["responses"]["409.taken-already"];
            412: components["responses"]["412.changed-since"];
            413: components["responses"]["413.body-too-long"];
            415: components["responses"]["415.unsupported-media-type"];
            422: components["responses"]["422.canals-do-not-fit.not-usable.out-of-bounds"];
            429: components["responses"]["429.too-often"];
            503: components["responses"]["503.busy"];
            default: components["responses"]["any-other"];
        };
    };
    bends_in_space_list: {
        parameters: {
            query?: {
                /** @description Of the page, as `next` and `previous` have it. */
                cursor?: string;
                /** @description So many on a page; left out, all are on one. */
                limit?: number;
            };
            header?: {
                /** @description The ETag seen last, several of them, or `*`: 304 where nothing has changed (RFC 9110, 13.1.2). */
                "If-None-Match"?: string;
            };
            path: {
                canal_id: string;
            };
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            200: {
                headers: {
                    /** @description Changes with all that is shown; If-None-Match takes it, and If-Match where a change asks for it. */
                    ETag?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["BendsInSpaceShown"];
                };
            };
            /** @description What is shown is what the ETag of If-None-Match is of. No body. */
            304: {
                headers: {
                    [name: string]: unknown;
                };
                content?: never;
            };
            400: components["responses"]["400.not-understood"];
            401: components["responses"]["401.key-refused.not-authenticated"];
            403: components["responses"]["403.scope-missing"];
            404: components["responses"]["404.not-found"];
            412: components["responses"]["412.changed-since"];
            429: components["responses"]["429.too-often"];
            503: components["responses"]["503.busy"];
            default: components["responses"]["any-other"];
        };
    };
    bend_in_space_retrieve: {
        parameters: {
            query?: never;
            header?: {
                /** @description The ETag seen last, several of them, or `*`: 304 where nothing has changed (RFC 9110, 13.1.2). */
                "If-None-Match"?: string;
            };
            path: {
                bend_id: string;
                canal_id: string;
            };
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            200: {
                headers: {
                    /** @description Changes with all that is shown; If-None-Match takes it, and If-Match where a change asks for it. */
                    ETag?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["BendInSpaceShown"];
                };
            };
            /** @description What is shown is what the ETag of If-None-Match is of. No body. */
            304: {
                headers: {
                    [name: string]: unknown;
                };
                content?: never;
            };
            400: components["responses"]["400.not-understood"];
            401: components["responses"]["401.key-refused.not-authenticated"];
            403: components["responses"]["403.scope-missing"];
            404: components["responses"]["404.not-found"];
            412: components["responses"]["412.changed-since"];
            429: components["responses"]["429.too-often"];
            503: components["responses"]["503.busy"];
            default: components["responses"]["any-other"];
        };
    };
    bend_in_space_update: {
        parameters: {
            query?: never;
            header?: never;
            path: {
                bend_id: string;
                canal_id: string;
            };
            cookie?: never;
        };
        requestBody: {
            content: {
                "application/json": components["schemas"]["BendInSpaceGivenRequest"];
            };
        };
        responses: {
            200: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["BendInSpaceShown"];
                };
            };
            201: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["BendInSpaceShown"];
                };
            };
            400: components["responses"]["400.not-understood.parse-error"];
            401: components["responses"]["401.key-refused.not-authenticated"];
            403: components["responses"]["403.not-allowed.scope-missing.token-missing"];
            404: components["responses"]["404.not-found"];
            408: components["responses"]["408.body-too-slow"];
            409: components["responses"]["409.id-used-differently"];
            413: components["responses"]["413.body-too-long"];
            415: components["responses"]["415.unsupported-media-type"];
            422: components["responses"]["422.not-usable.views-do-not-fit"];
            429: components["responses"]["429.too-often"];
            503: components["responses"]["503.busy"];
            default: components["responses"]["any-other"];
        };
    };
    junctions_create: {
        parameters: {
            query?: never;
            header?: {
                /** @description In quotation marks, up to 100 visible characters, such as a new UUID: sent again with the same key within a day, the same is not done again but answered as it was. 409, `still-under-way`, while the first goes on; 422, `idempotency-key-used-differently`, for anything else with the key. What was refused may be sent again. */
                "Idempotency-Key"?: string;
            };
            path: {
                canal_id: string;
            };
            cookie?: never;
        };
        requestBody: {
            content: {
                "application/json": components["schemas"]["JunctionGivenRequest"];
            };
        };
        responses: {
            200: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["CanalShown"];
                };
            };
            201: {
                headers: {
                    /** @description Where what was made lies. */
                    Location?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["CanalShown"];
                };
            };
            400: components["responses"]["400.not-understood.parse-error"];
            401: components["responses"]["401.key-refused.not-authenticated"];
            403: components["responses"]["403.not-allowed.scope-missing.token-missing"];
            404: components["responses"]["404.not-found"];
            408: components["responses"]["408.body-too-slow"];
            409: components["responses"]["409.id-used-differently.still-under-way"];
            413: components["responses"]["413.body-too-long"];
            415: components["responses"]["415.unsupported-media-type"];
            422: components["responses"]["422.idempotency-key-used-differently.not-usable.out-of-bounds"];
            429: components["responses"]["429.too-often"];
            503: components["responses"]["503.busy"];
            default: components["responses"]["any-other"];
        };
    };
    readings_list: {
        parameters: {
            query?: {
                /** @description Of the page, as `next` and `previous` have it. */
                cursor?: string;
                /** @description So many on a page; left out, all are on one. */
                limit?: number;
            };
            header?: {
                /** @description The ETag seen last, several of them, or `*`: 304 where nothing has changed (RFC 9110, 13.1.2). */
                "If-None-Match"?: string;
            };
            path: {
                canal_id: string;
            };
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            200: {
                headers: {
                    /** @description Changes with all that is shown; If-None-Match takes it, and If-Match where a change asks for it. */
                    ETag?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["ReadingList"];
                };
            };
            /** @description What is shown is what the ETag of If-None-Match is of. No body. */
            304: {
                headers: {
                    [name: string]: unknown;
                };
                content?: never;
            };
            400: components["responses"]["400.not-understood"];
            401: components["responses"]["401.key-refused.not-authenticated"];
            403: components["responses"]["403.scope-missing"];
            404: components["responses"]["404.not-found"];
            412: components["responses"]["412.changed-since"];
            429: components["responses"]["429.too-often"];
            503: components["responses"]["503.busy"];
            default: components["responses"]["any-other"];
        };
    };
    readings_create: {
        parameters: {
            query?: never;
            header?: {
                /** @description In quotation marks, up to 100 visible characters, such as a new UUID: sent again with the same key within a day, the same is not done again but answered as it was. 409, `still-under-way`, while the first goes on; 422, `idempotency-key-used-differently`, for anything else with the key. What was refused may be sent again. */
                "Idempotency-Key"?: string;
            };
            path: {
                canal_id: string;
            };
            cookie?: never;
        };
        requestBody: {
            content: {
                "application/json": components["schemas"]["ReadingGivenRequest"];
            };
        };
        responses: {
            200: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["CanalShown"];
                };
            };
            201: {
                headers: {
                    /** @description Where what was made lies. */
                    Location?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["CanalShown"];
                };
            };
            400: components["responses"]["400.not-understood.parse-error"];
            401: components["responses"]["401.key-refused.not-authenticated"];
            403: components["responses"]["403.not-allowed.scope-missing.token-missing"];
            404: components["responses"]["404.not-found"];
            408: components["responses"]["408.body-too-slow"];
            409: components["responses"]["409.id-used-differently.still-under-way"];
            413: components["responses"]["413.body-too-long"];
            415: components["responses"]["415.unsupported-media-type"];
            /**
             * @description - `idempotency-key-used-differently`: The `Idempotency-Key` came before, within a day, with another body, to another address or on another condition.
             *     - `length-out-of-bounds`: A length that no tooth has.
             *     - `not-usable`: Good data that cannot be used here.
             *     - `out-of-bounds`: A number lies outside the bounds of its quantity.
             *     - `reading-not-usable`: A reading that no length can be taken from.
             */
            422: {
                headers: {
                    /** @description Names the request. Tell it to whoever looks after the server. */
                    "X-Request-Id"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"] & {
                        /** @enum {unknown} */
                        type?: "/api/v1/problems/idempotency-key-used-differently" | "/api/v1/problems/length-out-of-bounds" | "/api/v1/problems/not-usable" | "/api/v1/problems/out-of-bounds" | "/api/v1/problems/reading-not-usable";
                    };
                };
            };
            429: components["responses"]["429.too-often"];
            503: components["responses"]["503.busy"];
            default: components["responses"]["any-other"];
        };
    };
    case_retrieve: {
        parameters: {
            query?: {
                /** @description Only these fields, with a comma between two; of a list, in each of its rows. */
                fields?: ("id" | "programme_id" | "external_id" | "patient_alias" | "tooth" | "setting" | "student" | "supervisor" | "created_at" | "revision" | "status" | "version" | "notation" | "designation" | "roots" | "canals" | "overrides" | "isolated" | "root_filled" | "perforation" | "anatomy" | "factors")[];
            };
            header?: {
                /** @description The ETag seen last, several of them, or `*`: 304 where nothing has changed (RFC 9110, 13.1.2). */
                "If-None-Match"?: string;
            };
            path: {
                case_id: string;
            };
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            200: {
                headers: {
                    /** @description Changes with all that is shown; If-None-Match takes it, and If-Match where a change asks for it. */
                    ETag?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["CaseShown"];
                };
            };
            /** @description What is shown is what the ETag of If-None-Match is of. No body. */
            304: {
                headers: {
                    [name: string]: unknown;
                };
                content?: never;
            };
            400: components["responses"]["400.not-understood"];
            401: components["responses"]["401.key-refused.not-authenticated"];
            403: components["responses"]["403.scope-missing"];
            404: components["responses"]["404.not-found"];
            412: components["responses"]["412.changed-since"];
            429: components["responses"]["429.too-often"];
            503: components["responses"]["503.busy"];
            default: components["responses"]["any-other"];
        };
    };
    case_update: {
        parameters: {
            query?: never;
            header: {
                /** @description The ETag of the case as you saw it. */
                "If-Match": string;
            };
            path: {
                case_id: string;
            };
            cookie?: never;
        };
        requestBody?: {
            content: {
                "application/json": components["schemas"]["PatchedCaseChangesRequest"];
            };
        };
        responses: {
            200: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["CaseShown"];
                };
            };
            400: components["responses"]["400.not-understood.parse-error"];
            401: components["responses"]["401.key-refused.not-authenticated"];
            403: components["responses"]["403.not-allowed.scope-missing.token-missing"];
            404: components["responses"]["404.not-found"];
            408: components["responses"]["408.body-too-slow"];
            409: components["responses"]["409.setting-fixed"];
            412: components["responses"]["412.changed-since"];
            413: components["responses"]["413.body-too-long"];
            415: components["responses"]["415.unsupported-media-type"];
            /**
             * @description - `alias-looks-like-a-name`: The alias may be a name. It is asked about once: whoever says that it is none has it taken.
             *     - `alias-refused`: The alias of a patient holds what an alias must not hold.
             *     - `factor-not-known`: No such factor of difficulty, or no such level of it.
             *     - `not-usable`: Good data that cannot be used here.
             *     - `out-of-bounds`: A number lies outside the bounds of its quantity.
             */
            422: {
                headers: {
                    /** @description Names the request. Tell it to whoever looks after the server. */
                    "X-Request-Id"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"] & {
                        /** @enum {unknown} */
                        type?: "/api/v1/problems/alias-looks-like-a-name" | "/api/v1/problems/alias-refused" | "/api/v1/problems/factor-not-known" | "/api/v1/problems/not-usable" | "/api/v1/problems/out-of-bounds";
                    };
                };
            };
            428: components["responses"]["428.precondition-missing"];
            429: components["responses"]["429.too-often"];
            503: components["responses"]["503.busy"];
            default: components["responses"]["any-other"];
        };
    };
    bands_retrieve: {
        parameters: {
            query?: never;
            header?: {
                /** @description The ETag seen last, several of them, or `*`: 304 where nothing has changed (RFC 9110, 13.1.2). */
                "If-None-Match"?: string;
            };
            path: {
                case_id: string;
            };
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            200: {
                headers: {
                    /** @description Changes with all that is shown; If-None-Match takes it, and If-Match where a change asks for it. */
                    ETag?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["BandsShown"];
                };
            };
            /** @description What is shown is what the ETag of If-None-Match is of. No body. */
            304: {
                headers: {
                    [name: string]: unknown;
                };
                content?: never;
            };
            400: components["responses"]["400.not-understood"];
            401: components["responses"]["401.key-refused.not-authenticated"];
            403: components["responses"]["403.scope-missing"];
            404: components["responses"]["404.not-found"];
            412: components["responses"]["412.changed-since"];
            429: components["responses"]["429.too-often"];
            503: components["responses"]["503.busy.took-too-long"];
            default: components["responses"]["any-other"];
        };
    };
    canals_list: {
        parameters: {
            query?: {
                /** @description Of the page, as `next` and `previous` have it. */
                cursor?: string;
                /** @description Only these fields, with a comma between two; of a list, in each of its rows. */
                fields?: ("id" | "name" | "root" | "reference_point" | "length" | "length_problem" | "junction" | "readings" | "junctions" | "finding" | "resorption" | "orifice_mm" | "curvature_deg" | "curve_start_mm" | "apex_mm" | "first_binder_size" | "curve_radius_mm" | "curve_from_end_mm" | "wall" | "widths")[];
                /** @description So many on a page; left out, all are on one. */
                limit?: number;
            };
            header?: {
                /** @description The ETag seen last, several of them, or `*`: 304 where nothing has changed (RFC 9110, 13.1.2). */
                "If-None-Match"?: string;
            };
            path: {
                case_id: string;
            };
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            200: {
                headers: {
                    /** @description Changes with all that is shown; If-None-Match takes it, and If-Match where a change asks for it. */
                    ETag?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["CanalList"];
                };
            };
            /** @description What is shown is what the ETag of If-None-Match is of. No body. */
            304: {
                headers: {
                    [name: string]: unknown;
                };
                content?: never;
            };
            400: components["responses"]["400.not-understood"];
            401: components["responses"]["401.key-refused.not-authenticated"];
            403: components["responses"]["403.scope-missing"];
            404: components["responses"]["404.not-found"];
            412: components["responses"]["412.changed-since"];
            429: components["responses"]["429.too-often"];
            503: components["responses"]["503.busy"];
            default: components["responses"]["any-other"];
        };
    };
    canals_create: {
        parameters: {
            query?: never;
            header?: {
                /** @description In quotation marks, up to 100 visible characters, such as a new UUID: sent again with the same key within a day, the same is not done again but answered as it was. 409, `still-under-way`, while the first goes on; 422, `idempotency-key-used-differently`, for anything else with the key. What was refused may be sent again. */
                "Idempotency-Key"?: string;
                /** @description The ETag of the case as you saw it; refused if it changed. */
                "If-Match"?: string;
            };
            path: {
                case_id: string;
            };
            cookie?: never;
        };
        requestBody: {
            content: {
                "application/json": components["schemas"]["CanalGivenRequest"];
            };
        };
        responses: {
            200: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["CanalShown"];
                };
            };
            201: {
                headers: {
                    /** @description Where what was made lies. */
                    Location?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["CanalShown"];
                };
            };
            400: components["responses"]["400.not-understood.parse-error"];
            401: components["responses"]["401.key-refused.not-authenticated"];
            403: components["responses"]["403.not-allowed.scope-missing.token-missing"];
            404: components["responses"]["404.not-found"];
            408: components["responses"]["408.body-too-slow"];
            409: components["responses"]["409.id-used-differently.still-under-way.taken-already"];
            412: components["responses"]["412.changed-since"];
            413: components["responses"]["413.body-too-long"];
            415: components["responses"]["415.unsupported-media-type"];
            /**
             * @description - `canals-do-not-fit`: Canals, roots or names that do not go together.
             *     - `idempotency-key-used-differently`: The `Idempotency-Key` came before, within a day, with another body, to another address or on another condition.
             *     - `not-usable`: Good data that cannot be used here.
             *     - `out-of-bounds`: A number lies outside the bounds of its quantity.
             */
            422: {
                headers: {
                    /** @description Names the request. Tell it to whoever looks after the server. */
                    "X-Request-Id"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"] & {
                        /** @enum {unknown} */
                        type?: "/api/v1/problems/canals-do-not-fit" | "/api/v1/problems/idempotency-key-used-differently" | "/api/v1/problems/not-usable" | "/api/v1/problems/out-of-bounds";
                    };
                };
            };
            429: components["responses"]["429.too-often"];
            503: components["responses"]["503.busy"];
            default: components["responses"]["any-other"];
        };
    };
    course_pdf: {
        parameters: {
            query?: never;
            header?: {
                /** @description The ETag seen last, several of them, or `*`: 304 where nothing has changed (RFC 9110, 13.1.2). */
                "If-None-Match"?: string;
            };
            path: {
                case_id: string;
            };
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            200: {
                headers: {
                    /** @description Changes with all that is shown; If-None-Match takes it, and If-Match where a change asks for it. */
                    ETag?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/pdf": string;
                };
            };
            /** @description What is shown is what the ETag of If-None-Match is of. No body. */
            304: {
                headers: {
                    [name: string]: unknown;
                };
                content?: never;
            };
            400: components["responses"]["400.not-understood"];
            401: components["responses"]["401.key-refused.not-authenticated"];
            403: components["responses"]["403.scope-missing"];
            404: components["responses"]["404.not-found"];
            412: components["responses"]["412.changed-since"];
            429: components["responses"]["429.too-often"];
            503: components["responses"]["503.busy.took-too-long"];
            default: components["responses"]["any-other"];
        };
    };
    events_list: {
        parameters: {
            query?: never;
            header?: {
                /** @description The ETag seen last, several of them, or `*`: 304 where nothing has changed (RFC 9110, 13.1.2). */
                "If-None-Match"?: string;
            };
            path: {
                case_id: string;
            };
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            200: {
                headers: {
                    /** @description Changes with all that is shown; If-None-Match takes it, and If-Match where a change asks for it. */
                    ETag?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["TreatmentShown"];
                };
            };
            /** @description What is shown is what the ETag of If-None-Match is of. No body. */
            304: {
                headers: {
                    [name: string]: unknown;
                };
                content?: never;
            };
            400: components["responses"]["400.not-understood"];
            401: components["responses"]["401.key-refused.not-authenticated"];
            403: components["responses"]["403.scope-missing"];
            404: components["responses"]["404.not-found"];
            412: components["responses"]["412.changed-since"];
            429: components["responses"]["429.too-often"];
            503: components["responses"]["503.busy"];
            default: components["responses"]["any-other"];
        };
    };
    events_create: {
        parameters: {
            query?: never;
            header?: {
                /** @description In quotation marks, up to 100 visible characters, such as a new UUID: sent again with the same key within a day, the same is not done again but answered as it was. 409, `still-under-way`, while the first goes on; 422, `idempotency-key-used-differently`, for anything else with the key. What was refused may be sent again. */
                "Idempotency-Key"?: string;
            };
            path: {
                case_id: string;
            };
            cookie?: never;
        };
        requestBody: {
            content: {
                "application/json": components["schemas"]["BatchGivenRequest"];
            };
        };
        responses: {
            200: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["TreatmentShown"];
                };
            };
            400: components["responses"]["400.not-understood.parse-error"];
            401: components["responses"]["401.key-refused.not-authenticated"];
            403: components["responses"]["403.not-allowed.scope-missing.token-missing"];
            404: components["responses"]["404.not-found"];
            408: components["responses"]["408.body-too-slow"];
            /**
             * @description - `id-used-differently`: An id of the sender's was used before for something else.
             *     - `other-person`: What a device sends was done by somebody else than who is signed in.
             *     - `sequence-gap`: Events of a device came with one left out; from there on nothing was stored.
             *     - `still-under-way`: The first request with this `Idempotency-Key` is not answered yet.
             */
            409: {
                headers: {
                    /** @description Names the request. Tell it to whoever looks after the server. */
                    "X-Request-Id"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"] & {
                        /** @enum {unknown} */
                        type?: "/api/v1/problems/id-used-differently" | "/api/v1/problems/other-person" | "/api/v1/problems/sequence-gap" | "/api/v1/problems/still-under-way";
                    };
                };
            };
            413: components["responses"]["413.body-too-long"];
            415: components["responses"]["415.unsupported-media-type"];
            /**
             * @description - `found-not-clear`: What was found in a canal contradicts itself.
             *     - `idempotency-key-used-differently`: The `Idempotency-Key` came before, within a day, with another body, to another address or on another condition.
             *     - `not-usable`: Good data that cannot be used here.
             *     - `out-of-bounds`: A number lies outside the bounds of its quantity.
             */
            422: {
                headers: {
                    /** @description Names the request. Tell it to whoever looks after the server. */
                    "X-Request-Id"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"] & {
                        /** @enum {unknown} */
                        type?: "/api/v1/problems/found-not-clear" | "/api/v1/problems/idempotency-key-used-differently" | "/api/v1/problems/not-usable" | "/api/v1/problems/out-of-bounds";
                    };
                };
            };
            429: components["responses"]["429.too-often"];
            503: components["responses"]["503.busy"];
            default: components["responses"]["any-other"];
        };
    };
    case_external_id_update: {
        parameters: {
            query?: never;
            header?: never;
            path: {
                case_id: string;
            };
            cookie?: never;
        };
        requestBody: {
            content: {
                "application/json": components["schemas"]["ExternalIdGivenRequest"];
            };
        };
        responses: {
            200: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["ExternalIdShown"];
                };
            };
            201: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["ExternalIdShown"];
                };
            };
            400: components["responses"]["400.not-understood.parse-error"];
            401: components["responses"]["401.key-refused.not-authenticated"];
            403: components["responses"]["403.not-allowed.scope-missing.token-missing"];
            404: components["responses"]["404.not-found"];
            408: components["responses"]["408.body-too-slow"];
            409: components["responses"]["409.external-id-taken"];
            413: components["responses"]["413.body-too-long"];
            415: components["responses"]["415.unsupported-media-type"];
            422: components["responses"]["422.external-id-refused"];
            429: components["responses"]["429.too-often"];
            503: components["responses"]["503.busy"];
            default: components["responses"]["any-other"];
        };
    };
    case_external_id_destroy: {
        parameters: {
            query?: never;
            header?: never;
            path: {
                case_id: string;
            };
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            /** @description No response body */
            204: {
                headers: {
                    [name: string]: unknown;
                };
                content?: never;
            };
            400: components["responses"]["400.not-understood"];
            401: components["responses"]["401.key-refused.not-authenticated"];
            403: components["responses"]["403.not-allowed.scope-missing.token-missing"];
            404: components["responses"]["404.not-found"];
            429: components["responses"]["429.too-often"];
            503: components["responses"]["503.busy"];
            default: components["responses"]["any-other"];
        };
    };
    images_list: {
        parameters: {
            query?: never;
            header?: {
                /** @description The ETag seen last, several of them, or `*`: 304 where nothing has changed (RFC 9110, 13.1.2). */
                "If-None-Match"?: string;
            };
            path: {
                case_id: string;
            };
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            200: {
                headers: {
                    /** @description Changes with all that is shown; If-None-Match takes it, and If-Match where a change asks for it. */
                    ETag?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["ImagesShown"];
                };
            };
            /** @description What is shown is what the ETag of If-None-Match is of. No body. */
            304: {
                headers: {
                    [name: string]: unknown;
                };
                content?: never;
            };
            400: components["responses"]["400.not-understood"];
            401: components["responses"]["401.key-refused.not-authenticated"];
            403: components["responses"]["403.scope-missing"];
            404: components["responses"]["404.not-found"];
            412: components["responses"]["412.changed-since"];
            429: components["responses"]["429.too-often"];
            503: components["responses"]["503.busy"];
            default: components["responses"]["any-other"];
        };
    };
    images_create: {
        parameters: {
            query?: never;
            header?: {
                /** @description In quotation marks, up to 100 visible characters, such as a new UUID: sent again with the same key within a day, the same is not done again but answered as it was. 409, `still-under-way`, while the first goes on; 422, `idempotency-key-used-differently`, for anything else with the key. What was refused may be sent again. */
                "Idempotency-Key"?: string;
            };
            path: {
                case_id: string;
            };
            cookie?: never;
        };
        requestBody: {
            content: {
                "multipart/form-data": components["schemas"]["ImageSentRequest"];
            };
        };
        responses: {
            201: {
                headers: {
                    /** @description Where what was made lies. */
                    Location?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["ImageShown"];
                };
            };
            400: components["responses"]["400.not-understood.parse-error"];
            401: components["responses"]["401.key-refused.not-authenticated"];
            403: components["responses"]["403.not-allowed.scope-missing.token-missing"];
            404: components["responses"]["404.not-found"];
            408: components["responses"]["408.body-too-slow"];
            409: components["responses"]["409.still-under-way"];
            413: components["responses"]["413.body-too-long"];
            415: components["responses"]["415.unsupported-media-type"];
            /**
             * @description - `idempotency-key-used-differently`: The `Idempotency-Key` came before, within a day, with another body, to another address or on another condition.
             *     - `image-refused`: A file that cannot be kept as an image.
             *     - `images-full`: The programme's room for images is used up.
             *     - `not-usable`: Good data that cannot be used here.
             */
            422: {
                headers: {
                    /** @description Names the request. Tell it to whoever looks after the server. */
                    "X-Request-Id"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"] & {
                        /** @enum {unknown} */
                        type?: "/api/v1/problems/idempotency-key-used-differently" | "/api/v1/problems/image-refused" | "/api/v1/problems/images-full" | "/api/v1/problems/not-usable";
                    };
                };
            };
            429: components["responses"]["429.too-often"];
            /**
             * @description - `busy`: The server works for others; nothing was kept.
             *     - `reading-busy`: The machine had no time to read an image.
             *     - `store-away`: The images' storage does not answer, or takes nothing more.
             *     - `took-too-long`: That took longer than one request may.
             */
            503: {
                headers: {
                    /** @description Seconds to wait. */
                    "Retry-After"?: number;
                    /** @description Names the request. Tell it to whoever looks after the server. */
                    "X-Request-Id"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"] & {
                        /** @enum {unknown} */
                        type?: "/api/v1/problems/busy" | "/api/v1/problems/reading-busy" | "/api/v1/problems/store-away" | "/api/v1/problems/took-too-long";
                    };
                };
            };
            default: components["responses"]["any-other"];
        };
    };
    image_retrieve: {
        parameters: {
            query?: never;
            header?: {
                /** @description The ETag seen last, several of them, or `*`: 304 where nothing has changed (RFC 9110, 13.1.2). */
                "If-None-Match"?: string;
            };
            path: {
                case_id: string;
                image_id: string;
            };
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            200: {
                headers: {
                    /** @description Changes with all that is shown; If-None-Match takes it, and If-Match where a change asks for it. */
                    ETag?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["ImageShown"];
                };
            };
            /** @description What is shown is what the ETag of If-None-Match is of. No body. */
            304: {
                headers: {
                    [name: string]: unknown;
                };
                content?: never;
            };
            400: components["responses"]["400.not-understood"];
            401: components["responses"]["401.key-refused.not-authenticated"];
            403: components["responses"]["403.scope-missing"];
            404: components["responses"]["404.not-found"];
            412: components["responses"]["412.changed-since"];
            429: components["responses"]["429.too-often"];
            503: components["responses"]["503.busy"];
            default: components["responses"]["any-other"];
        };
    };
    image_update: {
        parameters: {
            query?: {
                /** @description The canal it shows; left out where it shows the tooth. */
                canal?: string;
                /** @description When it was taken; left out: now. */
                device_time?: string;
                /** @description What it was taken for. */
                purpose?: "cone" | "final" | "final_size" | "length" | "other" | "pre_operative";
            };
            header?: {
                /** @description SHA-256 of the whole image (RFC 9530): `sha-256=:<base64>:`. */
                "Repr-Digest"?: string;
            };
            path: {
                case_id: string;
                image_id: string;
            };
            cookie?: never;
        };
        requestBody?: {
            content: {
                "application/octet-stream": string;
                "image/*": string;
            };
        };
        responses: {
            200: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["ImageShown"];
                };
            };
            201: {
                headers: {
                    /** @description Where what was made lies. */
                    Location?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["ImageShown"];
                };
            };
            400: components["responses"]["400.not-understood.parse-error"];
            401: components["responses"]["401.key-refused.not-authenticated"];
            403: components["responses"]["403.not-allowed.scope-missing.token-missing"];
            404: components["responses"]["404.not-found"];
            408: components["responses"]["408.body-too-slow"];
            409: components["responses"]["409.id-used-differently"];
            410: components["responses"]["410.image-removed"];
            413: components["responses"]["413.body-too-long"];
            415: components["responses"]["415.unsupported-media-type"];
            /**
             * @description - `image-damaged`: The image was changed on its way.
             *     - `image-refused`: A file that cannot be kept as an image.
             *     - `images-full`: The programme's room for images is used up.
             *     - `not-usable`: Good data that cannot be used here.
             */
            422: {
                headers: {
                    /** @description Names the request. Tell it to whoever looks after the server. */
                    "X-Request-Id"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"] & {
                        /** @enum {unknown} */
                        type?: "/api/v1/problems/image-damaged" | "/api/v1/problems/image-refused" | "/api/v1/problems/images-full" | "/api/v1/problems/not-usable";
                    };
                };
            };
            429: components["responses"]["429.too-often"];
            /**
             * @description - `busy`: The server works for others; nothing was kept.
             *     - `reading-busy`: The machine had no time to read an image.
             *     - `store-away`: The images' storage does not answer, or takes nothing more.
             *     - `took-too-long`: That took longer than one request may.
             */
            503: {
                headers: {
                    /** @description Seconds to wait. */
                    "Retry-After"?: number;
                    /** @description Names the request. Tell it to whoever looks after the server. */
                    "X-Request-Id"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"] & {
                        /** @enum {unknown} */
                        type?: "/api/v1/problems/busy" | "/api/v1/problems/reading-busy" | "/api/v1/problems/store-away" | "/api/v1/problems/took-too-long";
                    };
                };
            };
            default: components["responses"]["any-other"];
        };
    };
    image_partial_update: {
        parameters: {
            query?: {
                /** @description The canal it shows; left out where it shows the tooth. */
                canal?: string;
                /** @description When it was taken; left out: now. */
                device_time?: string;
                /** @description What it was taken for. */
                purpose?: "cone" | "final" | "final_size" | "length" | "other" | "pre_operative";
            };
            header: {
                /** @description SHA-256 of the whole image (RFC 9530): `sha-256=:<base64>:`. */
                "Repr-Digest": string;
                /** @description Bytes of the whole image. */
                "Upload-Length": number;
                /** @description Where it begins. */
                "Upload-Offset": number;
            };
            path: {
                case_id: string;
                image_id: string;
            };
            cookie?: never;
        };
        requestBody?: {
            content: {
                "application/partial-upload": string;
            };
        };
        responses: {
            200: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["ImageShown"];
                };
            };
            400: components["responses"]["400.not-understood.parse-error"];
            401: components["responses"]["401.key-refused.not-authenticated"];
            403: components["responses"]["403.not-allowed.scope-missing.token-missing"];
            404: components["responses"]["404.not-found"];
            408: components["responses"]["408.body-too-slow"];
            409: components["responses"]["409.id-used-differently.offset-mismatch"];
            410: components["responses"]["410.image-removed"];
            413: components["responses"]["413.body-too-long"];
            415: components["responses"]["415.unsupported-media-type"];
            /**
             * @description - `image-damaged`: The image was changed on its way.
             *     - `image-refused`: A file that cannot be kept as an image.
             *     - `images-full`: The programme's room for images is used up.
             *     - `not-usable`: Good data that cannot be used here.
             */
            422: {
                headers: {
                    /** @description Names the request. Tell it to whoever looks after the server. */
                    "X-Request-Id"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"] & {
                        /** @enum {unknown} */
                        type?: "/api/v1/problems/image-damaged" | "/api/v1/problems/image-refused" | "/api/v1/problems/images-full" | "/api/v1/problems/not-usable";
                    };
                };
            };
            429: components["responses"]["429.too-often"];
            /**
             * @description - `busy`: The server works for others; nothing was kept.
             *     - `reading-busy`: The machine had no time to read an image.
             *     - `store-away`: The images' storage does not answer, or takes nothing more.
             *     - `took-too-long`: That took longer than one request may.
             */
            503: {
                headers: {
                    /** @description Seconds to wait. */
                    "Retry-After"?: number;
                    /** @description Names the request. Tell it to whoever looks after the server. */
                    "X-Request-Id"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"] & {
                        /** @enum {unknown} */
                        type?: "/api/v1/problems/busy" | "/api/v1/problems/reading-busy" | "/api/v1/problems/store-away" | "/api/v1/problems/took-too-long";
                    };
                };
            };
            default: components["responses"]["any-other"];
        };
    };
    image_content_retrieve: {
        parameters: {
            query?: never;
            header?: {
                /** @description The ETag seen last, several of them, or `*`: 304 where nothing has changed (RFC 9110, 13.1.2). */
                "If-None-Match"?: string;
            };
            path: {
                case_id: string;
                image_id: string;
            };
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            200: {
                headers: {
                    /** @description Changes with all that is shown; If-None-Match takes it, and If-Match where a change asks for it. */
                    ETag?: string;
                    [name: string]: unknown;
                };
                content: {
                    "image/jpeg": string;
                    "image/png": string;
                };
            };
            /** @description What is shown is what the ETag of If-None-Match is of. No body. */
            304: {
                headers: {
                    [name: string]: unknown;
                };
                content?: never;
            };
            400: components["responses"]["400.not-understood"];
            401: components["responses"]["401.key-refused.not-authenticated"];
            403: components["responses"]["403.scope-missing"];
            404: components["responses"]["404.not-found"];
            410: components["responses"]["410.image-removed"];
            412: components["responses"]["412.changed-since"];
            429: components["responses"]["429.too-often"];
            503: components["responses"]["503.busy.store-away"];
            default: components["responses"]["any-other"];
        };
    };
    image_data_set_retrieve: {
        parameters: {
            query?: never;
            header?: {
                /** @description The ETag seen last, several of them, or `*`: 304 where nothing has changed (RFC 9110, 13.1.2). */
                "If-None-Match"?: string;
            };
            path: {
                case_id: string;
                image_id: string;
            };
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            200: {
                headers: {
                    /** @description Changes with all that is shown; If-None-Match takes it, and If-Match where a change asks for it. */
                    ETag?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/dicom": string;
                };
            };
            /** @description What is shown is what the ETag of If-None-Match is of. No body. */
            304: {
                headers: {
                    [name: string]: unknown;
                };
                content?: never;
            };
            400: components["responses"]["400.not-understood"];
            401: components["responses"]["401.key-refused.not-authenticated"];
            403: components["responses"]["403.scope-missing"];
            404: components["responses"]["404.not-found"];
            410: components["responses"]["410.image-removed"];
            412: components["responses"]["412.changed-since"];
            429: components["responses"]["429.too-often"];
            503: components["responses"]["503.busy.store-away"];
            default: components["responses"]["any-other"];
        };
    };
    markings_list: {
        parameters: {
            query?: never;
            header?: {
                /** @description The ETag seen last, several of them, or `*`: 304 where nothing has changed (RFC 9110, 13.1.2). */
                "If-None-Match"?: string;
            };
            path: {
                case_id: string;
                image_id: string;
            };
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            200: {
                headers: {
                    /** @description Changes with all that is shown; If-None-Match takes it, and If-Match where a change asks for it. */
                    ETag?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["MarkingsShown"];
                };
            };
            /** @description What is shown is what the ETag of If-None-Match is of. No body. */
            304: {
                headers: {
                    [name: string]: unknown;
                };
                content?: never;
            };
            400: components["responses"]["400.not-understood"];
            401: components["responses"]["401.key-refused.not-authenticated"];
            403: components["responses"]["403.scope-missing"];
            404: components["responses"]["404.not-found"];
            412: components["responses"]["412.changed-since"];
            429: components["responses"]["429.too-often"];
            503: components["responses"]["503.busy"];
            default: components["responses"]["any-other"];
        };
    };
    marking_retrieve: {
        parameters: {
            query?: never;
            header?: {
                /** @description The ETag seen last, several of them, or `*`: 304 where nothing has changed (RFC 9110, 13.1.2). */
                "If-None-Match"?: string;
            };
            path: {
                case_id: string;
                image_id: string;
                marking_id: string;
            };
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            200: {
                headers: {
                    /** @description Changes with all that is shown; If-None-Match takes it, and If-Match where a change asks for it. */
                    ETag?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["MarkingShown"];
                };
            };
            /** @description What is shown is what the ETag of If-None-Match is of. No body. */
            304: {
                headers: {
                    [name: string]: unknown;
                };
                content?: never;
            };
            400: components["responses"]["400.not-understood"];
            401: components["responses"]["401.key-refused.not-authenticated"];
            403: components["responses"]["403.scope-missing"];
            404: components["responses"]["404.not-found"];
            412: components["responses"]["412.changed-since"];
            429: components["responses"]["429.too-often"];
            503: components["responses"]["503.busy"];
            default: components["responses"]["any-other"];
        };
    };
    marking_update: {
        parameters: {
            query?: never;
            header?: never;
            path: {
                case_id: string;
                image_id: string;
                marking_id: string;
            };
            cookie?: never;
        };
        requestBody: {
            content: {
                "application/json": components["schemas"]["MarkingGivenRequest"];
            };
        };
        responses: {
            200: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["MarkingShown"];
                };
            };
            201: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["MarkingShown"];
                };
            };
            400: components["responses"]["400.not-understood.parse-error"];
            401: components["responses"]["401.key-refused.not-authenticated"];
            403: components["responses"]["403.not-allowed.scope-missing.token-missing"];
            404: components["responses"]["404.not-found"];
            408: components["responses"]["408.body-too-slow"];
            409: components["responses"]["409.id-used-differently"];
            410: components["responses"]["410.image-removed"];
            413: components["responses"]["413.body-too-long"];
            415: components["responses"]["415.unsupported-media-type"];
            /**
             * @description - `choice-not-possible`: A choice for a canal that its findings do not allow.
             *     - `length-out-of-bounds`: A length that no tooth has.
             *     - `no-such-canal`: The plan has no canal of that name.
             *     - `not-usable`: Good data that cannot be used here.
             *     - `out-of-bounds`: A number lies outside the bounds of its quantity.
             *     - `points-do-not-fit`: Points from which no curve can be measured.
             *     - `reading-not-usable`: A reading that no length can be taken from.
             *     - `scale-not-usable`: An image that cannot be measured.
             *     - `too-much-work`: Working it out would take more than one request may.
             */
            422: {
                headers: {
                    /** @description Names the request. Tell it to whoever looks after the server. */
                    "X-Request-Id"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"] & {
                        /** @enum {unknown} */
                        type?: "/api/v1/problems/choice-not-possible" | "/api/v1/problems/length-out-of-bounds" | "/api/v1/problems/no-such-canal" | "/api/v1/problems/not-usable" | "/api/v1/problems/out-of-bounds" | "/api/v1/problems/points-do-not-fit" | "/api/v1/problems/reading-not-usable" | "/api/v1/problems/scale-not-usable" | "/api/v1/problems/too-much-work";
                    };
                };
            };
            429: components["responses"]["429.too-often"];
            503: components["responses"]["503.busy"];
            default: components["responses"]["any-other"];
        };
    };
    image_move: {
        parameters: {
            query?: never;
            header?: {
                /** @description In quotation marks, up to 100 visible characters, such as a new UUID: sent again with the same key within a day, the same is not done again but answered as it was. 409, `still-under-way`, while the first goes on; 422, `idempotency-key-used-differently`, for anything else with the key. What was refused may be sent again. */
                "Idempotency-Key"?: string;
            };
            path: {
                case_id: string;
                image_id: string;
            };
            cookie?: never;
        };
        requestBody: {
            content: {
                "application/json": components["schemas"]["ImageMoveGivenRequest"];
            };
        };
        responses: {
            200: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["ImageShown"];
                };
            };
            400: components["responses"]["400.not-understood.parse-error"];
            401: components["responses"]["401.key-refused.not-authenticated"];
            403: components["responses"]["403.not-allowed.scope-missing.token-missing"];
            404: components["responses"]["404.not-found"];
            408: components["responses"]["408.body-too-slow"];
            409: components["responses"]["409.still-under-way"];
            413: components["responses"]["413.body-too-long"];
            415: components["responses"]["415.unsupported-media-type"];
            422: components["responses"]["422.idempotency-key-used-differently.not-usable"];
            429: components["responses"]["429.too-often"];
            503: components["responses"]["503.busy"];
            default: components["responses"]["any-other"];
        };
    };
    image_name_check: {
        parameters: {
            query?: never;
            header?: {
                /** @description In quotation marks, up to 100 visible characters, such as a new UUID: sent again with the same key within a day, the same is not done again but answered as it was. 409, `still-under-way`, while the first goes on; 422, `idempotency-key-used-differently`, for anything else with the key. What was refused may be sent again. */
                "Idempotency-Key"?: string;
            };
            path: {
                case_id: string;
                image_id: string;
            };
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            200: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["ImageShown"];
                };
            };
            400: components["responses"]["400.not-understood"];
            401: components["responses"]["401.key-refused.not-authenticated"];
            403: components["responses"]["403.key-opens-not.not-allowed.token-missing"];
            404: components["responses"]["404.not-found"];
            409: components["responses"]["409.still-under-way"];
            410: components["responses"]["410.image-removed"];
            422: components["responses"]["422.idempotency-key-used-differently.not-usable"];
            503: components["responses"]["503.busy"];
            default: components["responses"]["any-other"];
        };
    };
    image_remove: {
        parameters: {
            query?: never;
            header?: {
                /** @description In quotation marks, up to 100 visible characters, such as a new UUID: sent again with the same key within a day, the same is not done again but answered as it was. 409, `still-under-way`, while the first goes on; 422, `idempotency-key-used-differently`, for anything else with the key. What was refused may be sent again. */
                "Idempotency-Key"?: string;
            };
            path: {
                case_id: string;
                image_id: string;
            };
            cookie?: never;
        };
        requestBody: {
            content: {
                "application/json": components["schemas"]["RemovalGivenRequest"];
            };
        };
        responses: {
            200: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["ImageShown"];
                };
            };
            400: components["responses"]["400.not-understood.parse-error"];
            401: components["responses"]["401.key-refused.not-authenticated"];
            403: components["responses"]["403.key-opens-not.not-allowed.token-missing"];
            404: components["responses"]["404.not-found"];
            408: components["responses"]["408.body-too-slow"];
            409: components["responses"]["409.still-under-way"];
            413: components["responses"]["413.body-too-long"];
            415: components["responses"]["415.unsupported-media-type"];
            422: components["responses"]["422.idempotency-key-used-differently"];
            503: components["responses"]["503.busy"];
            default: components["responses"]["any-other"];
        };
    };
    image_strike: {
        parameters: {
            query?: never;
            header?: {
                /** @description In quotation marks, up to 100 visible characters, such as a new UUID: sent again with the same key within a day, the same is not done again but answered as it was. 409, `still-under-way`, while the first goes on; 422, `idempotency-key-used-differently`, for anything else with the key. What was refused may be sent again. */
                "Idempotency-Key"?: string;
            };
            path: {
                case_id: string;
                image_id: string;
            };
            cookie?: never;
        };
        requestBody: {
            content: {
                "application/json": components["schemas"]["ImageStrikeGivenRequest"];
            };
        };
        responses: {
            200: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["ImageShown"];
                };
            };
            400: components["responses"]["400.not-understood.parse-error"];
            401: components["responses"]["401.key-refused.not-authenticated"];
            403: components["responses"]["403.not-allowed.scope-missing.token-missing"];
            404: components["responses"]["404.not-found"];
            408: components["responses"]["408.body-too-slow"];
            409: components["responses"]["409.still-under-way"];
            413: components["responses"]["413.body-too-long"];
            415: components["responses"]["415.unsupported-media-type"];
            422: components["responses"]["422.idempotency-key-used-differently"];
            429: components["responses"]["429.too-often"];
            503: components["responses"]["503.busy"];
            default: components["responses"]["any-other"];
        };
    };
    image_thumbnail_retrieve: {
        parameters: {
            query?: never;
            header?: {
                /** @description The ETag seen last, several of them, or `*`: 304 where nothing has changed (RFC 9110, 13.1.2). */
                "If-None-Match"?: string;
            };
            path: {
                case_id: string;
                image_id: string;
            };
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            200: {
                headers: {
                    /** @description Changes with all that is shown; If-None-Match takes it, and If-Match where a change asks for it. */
                    ETag?: string;
                    [name: string]: unknown;
                };
                content: {
                    "image/jpeg": string;
                };
            };
            /** @description What is shown is what the ETag of If-None-Match is of. No body. */
            304: {
                headers: {
                    [name: string]: unknown;
                };
                content?: never;
            };
            400: components["responses"]["400.not-understood"];
            401: components["responses"]["401.key-refused.not-authenticated"];
            403: components["responses"]["403.scope-missing"];
            404: components["responses"]["404.not-found"];
            410: components["responses"]["410.image-removed"];
            412: components["responses"]["412.changed-since"];
            429: components["responses"]["429.too-often"];
            503: components["responses"]["503.busy.store-away"];
            default: components["responses"]["any-other"];
        };
    };
    on_site_sign_offs_create: {
        parameters: {
            query?: never;
            header?: {
                /** @description In quotation marks, up to 100 visible characters, such as a new UUID: sent again with the same key within a day, the same is not done again but answered as it was. 409, `still-under-way`, while the first goes on; 422, `idempotency-key-used-differently`, for anything else with the key. What was refused may be sent again. */
                "Idempotency-Key"?: string;
            };
            path: {
                case_id: string;
            };
            cookie?: never;
        };
        requestBody: {
            content: {
                "application/json": components["schemas"]["OnSiteSignOffGivenRequest"];
            };
        };
        responses: {
            200: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["TreatmentShown"];
                };
            };
            400: components["responses"]["400.not-understood.parse-error"];
            401: components["responses"]["401.key-refused.not-authenticated"];
            403: components["responses"]["403.key-opens-not.not-allowed.token-missing"];
            404: components["responses"]["404.not-found"];
            408: components["responses"]["408.body-too-slow"];
            409: components["responses"]["409.hold-point-answered.still-under-way"];
            413: components["responses"]["413.body-too-long"];
            415: components["responses"]["415.unsupported-media-type"];
            422: components["responses"]["422.code-refused.idempotency-key-used-differently.not-usable"];
            429: components["responses"]["429.too-many-tries"];
            503: components["responses"]["503.busy"];
            default: components["responses"]["any-other"];
        };
    };
    overrides_list: {
        parameters: {
            query?: {
                /** @description Of the page, as `next` and `previous` have it. */
                cursor?: string;
                /** @description Only these fields, with a comma between two; of a list, in each of its rows. */
                fields?: ("id" | "code" | "canal" | "reason" | "final_size" | "supervisor" | "at" | "withdrawn_at" | "withdrawn_by")[];
                /** @description So many on a page; left out, all are on one. */
                limit?: number;
            };
            header?: {
                /** @description The ETag seen last, several of them, or `*`: 304 where nothing has changed (RFC 9110, 13.1.2). */
                "If-None-Match"?: string;
            };
            path: {
                case_id: string;
            };
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            200: {
                headers: {
                    /** @description Changes with all that is shown; If-None-Match takes it, and If-Match where a change asks for it. */
                    ETag?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["OverrideList"];
                };
            };
            /** @description What is shown is what the ETag of If-None-Match is of. No body. */
            304: {
                headers: {
                    [name: string]: unknown;
                };
                content?: never;
            };
            400: components["responses"]["400.not-understood"];
            401: components["responses"]["401.key-refused.not-authenticated"];
            403: components["responses"]["403.scope-missing"];
            404: components["responses"]["404.not-found"];
            412: components["responses"]["412.changed-since"];
            429: components["responses"]["429.too-often"];
            503: components["responses"]["503.busy"];
            default: components["responses"]["any-other"];
        };
    };
    overrides_create: {
        parameters: {
            query?: never;
            header?: {
                /** @description In quotation marks, up to 100 visible characters, such as a new UUID: sent again with the same key within a day, the same is not done again but answered as it was. 409, `still-under-way`, while the first goes on; 422, `idempotency-key-used-differently`, for anything else with the key. What was refused may be sent again. */
                "Idempotency-Key"?: string;
            };
            path: {
                case_id: string;
            };
            cookie?: never;
        };
        requestBody: {
            content: {
                "application/json": components["schemas"]["OverrideGivenRequest"];
            };
        };
        responses: {
            200: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["OverrideShown"];
                };
            };
            201: {
                headers: {
                    /** @description Where what was made lies. */
                    Location?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["OverrideShown"];
                };
            };
            400: components["responses"]["400.not-understood.parse-error"];
            401: components["responses"]["401.key-refused.not-authenticated"];
            403: components["responses"]["403.not-allowed.scope-missing.token-missing"];
            404: components["responses"]["404.not-found"];
            408: components["responses"]["408.body-too-slow"];
            409: components["responses"]["409.id-used-differently.still-under-way.taken-already"];
            413: components["responses"]["413.body-too-long"];
            415: components["responses"]["415.unsupported-media-type"];
            /**
             * @description - `idempotency-key-used-differently`: The `Idempotency-Key` came before, within a day, with another body, to another address or on another condition.
             *     - `not-usable`: Good data that cannot be used here.
             *     - `out-of-bounds`: A number lies outside the bounds of its quantity.
             *     - `override-not-possible`: A caution that nobody may override, or that is not there.
             */
            422: {
                headers: {
                    /** @description Names the request. Tell it to whoever looks after the server. */
                    "X-Request-Id"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"] & {
                        /** @enum {unknown} */
                        type?: "/api/v1/problems/idempotency-key-used-differently" | "/api/v1/problems/not-usable" | "/api/v1/problems/out-of-bounds" | "/api/v1/problems/override-not-possible";
                    };
                };
            };
            429: components["responses"]["429.too-often"];
            503: components["responses"]["503.busy"];
            default: components["responses"]["any-other"];
        };
    };
    plan_versions_list: {
        parameters: {
            query?: {
                /** @description Of the page, as `next` and `previous` have it. */
                cursor?: string;
                /** @description Only these fields, with a comma between two; of a list, in each of its rows. */
                fields?: ("id" | "case_id" | "number" | "state" | "stale" | "hash" | "intent_hash" | "author" | "kit_id" | "technique" | "stops" | "cautions" | "planner_version" | "created_at" | "submitted_at" | "decided_at" | "not_released" | "carried_from" | "reviews" | "revocations")[];
                /** @description So many on a page; left out, all are on one. */
                limit?: number;
            };
            header?: {
                /** @description The ETag seen last, several of them, or `*`: 304 where nothing has changed (RFC 9110, 13.1.2). */
                "If-None-Match"?: string;
            };
            path: {
                case_id: string;
            };
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            200: {
                headers: {
                    /** @description Changes with all that is shown; If-None-Match takes it, and If-Match where a change asks for it. */
                    ETag?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["VersionList"];
                };
            };
            /** @description What is shown is what the ETag of If-None-Match is of. No body. */
            304: {
                headers: {
                    [name: string]: unknown;
                };
                content?: never;
            };
            400: components["responses"]["400.not-understood"];
            401: components["responses"]["401.key-refused.not-authenticated"];
            403: components["responses"]["403.scope-missing"];
            404: components["responses"]["404.not-found"];
            412: components["responses"]["412.changed-since"];
            429: components["responses"]["429.too-often"];
            503: components["responses"]["503.busy"];
            default: components["responses"]["any-other"];
        };
    };
    plan_versions_create: {
        parameters: {
            query?: {
                /** @description These fields too, with a comma between two: they are heavy and left out unless named here or in `fields`. */
                expand?: ("choices" | "plan" | "given")[];
            };
            header?: {
                /** @description In quotation marks, up to 100 visible characters, such as a new UUID: sent again with the same key within a day, the same is not done again but answered as it was. 409, `still-under-way`, while the first goes on; 422, `idempotency-key-used-differently`, for anything else with the key. What was refused may be sent again. */
                "Idempotency-Key"?: string;
            };
            path: {
                case_id: string;
            };
            cookie?: never;
        };
        requestBody: {
            content: {
                "application/json": components["schemas"]["VersionGivenRequest"];
            };
        };
        responses: {
            200: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["VersionShown"];
                };
            };
            201: {
                headers: {
                    /** @description Where what was made lies. */
                    Location?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["VersionShown"];
                };
            };
            400: components["responses"]["400.not-understood.parse-error"];
            401: components["responses"]["401.key-refused.not-authenticated"];
            403: components["responses"]["403.not-allowed.scope-missing.token-missing"];
            404: components["responses"]["404.not-found"];
            408: components["responses"]["408.body-too-slow"];
            409: components["responses"]["409.id-used-differently.still-under-way"];
            413: components["responses"]["413.body-too-long"];
            415: components["responses"]["415.unsupported-media-type"];
            /**
             * @description - `canals-do-not-fit`: Canals, roots or names that do not go together.
             *     - `charted-not-planned`: The tooth can be charted, and not planned here.
             *     - `choice-not-possible`: A choice for a canal that its findings do not allow.
             *     - `factor-not-known`: No such factor of difficulty, or no such level of it.
             *     - `idempotency-key-used-differently`: The `Idempotency-Key` came before, within a day, with another body, to another address or on another condition.
             *     - `instrument-not-described`: An instrument of which something is not said that planning needs.
             *     - `instrument-too-short`: An instrument that does not reach as deep as it has to.
             *     - `junction-beyond-canal`: A junction that lies outside its canal.
             *     - `kit-lacks-instrument`: The technique needs an instrument that the kit has not.
             *     - `length-out-of-bounds`: A length that no tooth has.
             *     - `motion-not-accepted`: The technique is written for another motion than the instrument's.
             *     - `no-canals`: A plan without a canal.
             *     - `not-usable`: Good data that cannot be used here.
             *     - `out-of-bounds`: A number lies outside the bounds of its quantity.
             *     - `override-not-possible`: A caution that nobody may override, or that is not there.
             *     - `reading-not-usable`: A reading that no length can be taken from.
             *     - `technique-not-usable`: A technique that breaks a rule of techniques, or that is not there.
             *     - `too-much-work`: Working it out would take more than one request may.
             */
            422: {
                headers: {
                    /** @description Names the request. Tell it to whoever looks after the server. */
                    "X-Request-Id"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"] & {
                        /** @enum {unknown} */
                        type?: "/api/v1/problems/canals-do-not-fit" | "/api/v1/problems/charted-not-planned" | "/api/v1/problems/choice-not-possible" | "/api/v1/problems/factor-not-known" | "/api/v1/problems/idempotency-key-used-differently" | "/api/v1/problems/instrument-not-described" | "/api/v1/problems/instrument-too-short" | "/api/v1/problems/junction-beyond-canal" | "/api/v1/problems/kit-lacks-instrument" | "/api/v1/problems/length-out-of-bounds" | "/api/v1/problems/motion-not-accepted" | "/api/v1/problems/no-canals" | "/api/v1/problems/not-usable" | "/api/v1/problems/out-of-bounds" | "/api/v1/problems/override-not-possible" | "/api/v1/problems/reading-not-usable" | "/api/v1/problems/technique-not-usable" | "/api/v1/problems/too-much-work";
                    };
                };
            };
            429: components["responses"]["429.too-often"];
            503: components["responses"]["503.busy.took-too-long"];
            default: components["responses"]["any-other"];
        };
    };
    case_preview: {
        parameters: {
            query?: never;
            header?: never;
            path: {
                case_id: string;
            };
            cookie?: never;
        };
        requestBody: {
            content: {
                "application/json": components["schemas"]["AskedGivenRequest"];
            };
        };
        responses: {
            200: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["Plan"];
                };
            };
            400: components["responses"]["400.not-understood.parse-error"];
            401: components["responses"]["401.key-refused.not-authenticated"];
            403: components["responses"]["403.not-allowed.scope-missing.token-missing"];
            404: components["responses"]["404.not-found"];
            408: components["responses"]["408.body-too-slow"];
            413: components["responses"]["413.body-too-long"];
            415: components["responses"]["415.unsupported-media-type"];
            /**
             * @description - `canals-do-not-fit`: Canals, roots or names that do not go together.
             *     - `charted-not-planned`: The tooth can be charted, and not planned here.
             *     - `choice-not-possible`: A choice for a canal that its findings do not allow.
             *     - `factor-not-known`: No such factor of difficulty, or no such level of it.
             *     - `instrument-not-described`: An instrument of which something is not said that planning needs.
             *     - `instrument-too-short`: An instrument that does not reach as deep as it has to.
             *     - `junction-beyond-canal`: A junction that lies outside its canal.
             *     - `kit-lacks-instrument`: The technique needs an instrument that the kit has not.
             *     - `length-out-of-bounds`: A length that no tooth has.
             *     - `motion-not-accepted`: The technique is written for another motion than the instrument's.
             *     - `no-canals`: A plan without a canal.
             *     - `not-usable`: Good data that cannot be used here.
             *     - `out-of-bounds`: A number lies outside the bounds of its quantity.
             *     - `override-not-possible`: A caution that nobody may override, or that is not there.
             *     - `reading-not-usable`: A reading that no length can be taken from.
             *     - `technique-not-usable`: A technique that breaks a rule of techniques, or that is not there.
             *     - `too-much-work`: Working it out would take more than one request may.
             */
            422: {
                headers: {
                    /** @description Names the request. Tell it to whoever looks after the server. */
                    "X-Request-Id"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"] & {
                        /** @enum {unknown} */
                        type?: "/api/v1/problems/canals-do-not-fit" | "/api/v1/problems/charted-not-planned" | "/api/v1/problems/choice-not-possible" | "/api/v1/problems/factor-not-known" | "/api/v1/problems/instrument-not-described" | "/api/v1/problems/instrument-too-short" | "/api/v1/problems/junction-beyond-canal" | "/api/v1/problems/kit-lacks-instrument" | "/api/v1/problems/length-out-of-bounds" | "/api/v1/problems/motion-not-accepted" | "/api/v1/problems/no-canals" | "/api/v1/problems/not-usable" | "/api/v1/problems/out-of-bounds" | "/api/v1/problems/override-not-possible" | "/api/v1/problems/reading-not-usable" | "/api/v1/problems/technique-not-usable" | "/api/v1/problems/too-much-work";
                    };
                };
            };
            429: components["responses"]["429.too-often"];
            503: components["responses"]["503.busy.took-too-long"];
            default: components["responses"]["any-other"];
        };
    };
    case_preview_changes: {
        parameters: {
            query?: never;
            header?: never;
            path: {
                case_id: string;
            };
            cookie?: never;
        };
        requestBody: {
            content: {
                "application/json": components["schemas"]["PreviewChangesGivenRequest"];
            };
        };
        responses: {
            200: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["GivenChanges"];
                };
            };
            400: components["responses"]["400.not-understood.parse-error"];
            401: components["responses"]["401.key-refused.not-authenticated"];
            403: components["responses"]["403.not-allowed.scope-missing.token-missing"];
            404: components["responses"]["404.not-found"];
            408: components["responses"]["408.body-too-slow"];
            413: components["responses"]["413.body-too-long"];
            415: components["responses"]["415.unsupported-media-type"];
            422: components["responses"]["422.not-usable.out-of-bounds"];
            429: components["responses"]["429.too-often"];
            503: components["responses"]["503.busy"];
            default: components["responses"]["any-other"];
        };
    };
    record_retrieve: {
        parameters: {
            query?: never;
            header?: {
                /** @description The ETag seen last, several of them, or `*`: 304 where nothing has changed (RFC 9110, 13.1.2). */
                "If-None-Match"?: string;
            };
            path: {
                case_id: string;
            };
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            200: {
                headers: {
                    /** @description Changes with all that is shown; If-None-Match takes it, and If-Match where a change asks for it. */
                    ETag?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["RecordShown"];
                };
            };
            /** @description What is shown is what the ETag of If-None-Match is of. No body. */
            304: {
                headers: {
                    [name: string]: unknown;
                };
                content?: never;
            };
            400: components["responses"]["400.not-understood"];
            401: components["responses"]["401.key-refused.not-authenticated"];
            403: components["responses"]["403.scope-missing"];
            404: components["responses"]["404.not-found"];
            412: components["responses"]["412.changed-since"];
            429: components["responses"]["429.too-often"];
            503: components["responses"]["503.busy"];
            default: components["responses"]["any-other"];
        };
    };
    record_pdf: {
        parameters: {
            query?: never;
            header?: {
                /** @description The ETag seen last, several of them, or `*`: 304 where nothing has changed (RFC 9110, 13.1.2). */
                "If-None-Match"?: string;
            };
            path: {
                case_id: string;
            };
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            200: {
                headers: {
                    /** @description Changes with all that is shown; If-None-Match takes it, and If-Match where a change asks for it. */
                    ETag?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/pdf": string;
                };
            };
            /** @description What is shown is what the ETag of If-None-Match is of. No body. */
            304: {
                headers: {
                    [name: string]: unknown;
                };
                content?: never;
            };
            400: components["responses"]["400.not-understood"];
            401: components["responses"]["401.key-refused.not-authenticated"];
            403: components["responses"]["403.scope-missing"];
            404: components["responses"]["404.not-found"];
            412: components["responses"]["412.changed-since"];
            429: components["responses"]["429.too-often"];
            503: components["responses"]["503.busy.store-away.took-too-long"];
            default: components["responses"]["any-other"];
        };
    };
    root_update: {
        parameters: {
            query?: never;
            header?: {
                /** @description The ETag of the case as you saw it; refused if it changed. */
                "If-Match"?: string;
            };
            path: {
                case_id: string;
                name: string;
            };
            cookie?: never;
        };
        requestBody: {
            content: {
                "application/json": components["schemas"]["RootGivenRequest"];
            };
        };
        responses: {
            200: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["CaseShown"];
                };
            };
            400: components["responses"]["400.not-understood.parse-error"];
            401: components["responses"]["401.key-refused.not-authenticated"];
            403: components["responses"]["403.not-allowed.scope-missing.token-missing"];
            404: components["responses"]["404.not-found"];
            408: components["responses"]["408.body-too-slow"];
            412: components["responses"]["412.changed-since"];
            413: components["responses"]["413.body-too-long"];
            415: components["responses"]["415.unsupported-media-type"];
            422: components["responses"]["422.not-usable"];
            429: components["responses"]["429.too-often"];
            503: components["responses"]["503.busy"];
            default: components["responses"]["any-other"];
        };
    };
    compute_curvature: {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        requestBody: {
            content: {
                "application/json": components["schemas"]["CurvatureRequest"];
            };
        };
        responses: {
            200: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["Curvature"];
                };
            };
            400: components["responses"]["400.not-understood.parse-error"];
            401: components["responses"]["401.key-refused.not-authenticated"];
            403: components["responses"]["403.token-missing"];
            408: components["responses"]["408.body-too-slow"];
            413: components["responses"]["413.body-too-long"];
            415: components["responses"]["415.unsupported-media-type"];
            422: components["responses"]["422.choice-not-possible.out-of-bounds.points-do-not-fit"];
            429: components["responses"]["429.too-often"];
            503: components["responses"]["503.busy.took-too-long"];
            default: components["responses"]["any-other"];
        };
    };
    compute_length: {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        requestBody: {
            content: {
                "application/json": components["schemas"]["LengthRequest"];
            };
        };
        responses: {
            200: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["Length"];
                };
            };
            400: components["responses"]["400.not-understood.parse-error"];
            401: components["responses"]["401.key-refused.not-authenticated"];
            403: components["responses"]["403.token-missing"];
            408: components["responses"]["408.body-too-slow"];
            413: components["responses"]["413.body-too-long"];
            415: components["responses"]["415.unsupported-media-type"];
            /**
             * @description - `choice-not-possible`: A choice for a canal that its findings do not allow.
             *     - `length-out-of-bounds`: A length that no tooth has.
             *     - `out-of-bounds`: A number lies outside the bounds of its quantity.
             *     - `reading-not-usable`: A reading that no length can be taken from.
             */
            422: {
                headers: {
                    /** @description Names the request. Tell it to whoever looks after the server. */
                    "X-Request-Id"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"] & {
                        /** @enum {unknown} */
                        type?: "/api/v1/problems/choice-not-possible" | "/api/v1/problems/length-out-of-bounds" | "/api/v1/problems/out-of-bounds" | "/api/v1/problems/reading-not-usable";
                    };
                };
            };
            429: components["responses"]["429.too-often"];
            503: components["responses"]["503.busy.took-too-long"];
            default: components["responses"]["any-other"];
        };
    };
    compute_measure: {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        requestBody: {
            content: {
                "application/json": components["schemas"]["MeasureRequest"];
            };
        };
        responses: {
            200: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["Measured"];
                };
            };
            400: components["responses"]["400.not-understood.parse-error"];
            401: components["responses"]["401.key-refused.not-authenticated"];
            403: components["responses"]["403.token-missing"];
            408: components["responses"]["408.body-too-slow"];
            413: components["responses"]["413.body-too-long"];
            415: components["responses"]["415.unsupported-media-type"];
            /**
             * @description - `choice-not-possible`: A choice for a canal that its findings do not allow.
             *     - `length-out-of-bounds`: A length that no tooth has.
             *     - `out-of-bounds`: A number lies outside the bounds of its quantity.
             *     - `points-do-not-fit`: Points from which no curve can be measured.
             *     - `scale-not-usable`: An image that cannot be measured.
             *     - `too-much-work`: Working it out would take more than one request may.
             */
            422: {
                headers: {
                    /** @description Names the request. Tell it to whoever looks after the server. */
                    "X-Request-Id"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"] & {
                        /** @enum {unknown} */
                        type?: "/api/v1/problems/choice-not-possible" | "/api/v1/problems/length-out-of-bounds" | "/api/v1/problems/out-of-bounds" | "/api/v1/problems/points-do-not-fit" | "/api/v1/problems/scale-not-usable" | "/api/v1/problems/too-much-work";
                    };
                };
            };
            429: components["responses"]["429.too-often"];
            503: components["responses"]["503.busy.took-too-long"];
            default: components["responses"]["any-other"];
        };
    };
    compute_plan: {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        requestBody: {
            content: {
                "application/json": components["schemas"]["PlanRequest"];
            };
        };
        responses: {
            200: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["Plan"];
                };
            };
            400: components["responses"]["400.not-understood.parse-error"];
            401: components["responses"]["401.key-refused.not-authenticated"];
            403: components["responses"]["403.token-missing"];
            408: components["responses"]["408.body-too-slow"];
            413: components["responses"]["413.body-too-long"];
            415: components["responses"]["415.unsupported-media-type"];
            /**
             * @description - `canals-do-not-fit`: Canals, roots or names that do not go together.
             *     - `charted-not-planned`: The tooth can be charted, and not planned here.
             *     - `choice-not-possible`: A choice for a canal that its findings do not allow.
             *     - `factor-not-known`: No such factor of difficulty, or no such level of it.
             *     - `instrument-not-described`: An instrument of which something is not said that planning needs.
             *     - `instrument-too-short`: An instrument that does not reach as deep as it has to.
             *     - `junction-beyond-canal`: A junction that lies outside its canal.
             *     - `kit-lacks-instrument`: The technique needs an instrument that the kit has not.
             *     - `length-out-of-bounds`: A length that no tooth has.
             *     - `motion-not-accepted`: The technique is written for another motion than the instrument's.
             *     - `no-canals`: A plan without a canal.
             *     - `notation-missing`: A designation that does not say its notation.
             *     - `out-of-bounds`: A number lies outside the bounds of its quantity.
             *     - `override-not-possible`: A caution that nobody may override, or that is not there.
             *     - `reading-not-usable`: A reading that no length can be taken from.
             *     - `technique-not-usable`: A technique that breaks a rule of techniques, or that is not there.
             *     - `too-much-work`: Working it out would take more than one request may.
             *     - `unknown-tooth`: There is no such tooth in that notation.
             */
            422: {
                headers: {
                    /** @description Names the request. Tell it to whoever looks after the server. */
                    "X-Request-Id"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"] & {
                        /** @enum {unknown} */
                        type?: "/api/v1/problems/canals-do-not-fit" | "/api/v1/problems/charted-not-planned" | "/api/v1/problems/choice-not-possible" | "/api/v1/problems/factor-not-known" | "/api/v1/problems/instrument-not-described" | "/api/v1/problems/instrument-too-short" | "/api/v1/problems/junction-beyond-canal" | "/api/v1/problems/kit-lacks-instrument" | "/api/v1/problems/length-out-of-bounds" | "/api/v1/problems/motion-not-accepted" | "/api/v1/problems/no-canals" | "/api/v1/problems/notation-missing" | "/api/v1/problems/out-of-bounds" | "/api/v1/problems/override-not-possible" | "/api/v1/problems/reading-not-usable" | "/api/v1/problems/technique-not-usable" | "/api/v1/problems/too-much-work" | "/api/v1/problems/unknown-tooth";
                    };
                };
            };
            429: components["responses"]["429.too-often"];
            503: components["responses"]["503.busy.took-too-long"];
            default: components["responses"]["any-other"];
        };
    };
    compute_run_sheet: {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        requestBody: {
            content: {
                "application/json": components["schemas"]["RunSheetRequest"];
            };
        };
        responses: {
            200: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["RunSheetAnswer"];
                };
            };
            400: components["responses"]["400.not-understood.parse-error"];
            401: components["responses"]["401.key-refused.not-authenticated"];
            403: components["responses"]["403.token-missing"];
            408: components["responses"]["408.body-too-slow"];
            413: components["responses"]["413.body-too-long"];
            415: components["responses"]["415.unsupported-media-type"];
            /**
             * @description - `canals-do-not-fit`: Canals, roots or names that do not go together.
             *     - `charted-not-planned`: The tooth can be charted, and not planned here.
             *     - `choice-not-possible`: A choice for a canal that its findings do not allow.
             *     - `factor-not-known`: No such factor of difficulty, or no such level of it.
             *     - `instrument-not-described`: An instrument of which something is not said that planning needs.
             *     - `instrument-too-short`: An instrument that does not reach as deep as it has to.
             *     - `junction-beyond-canal`: A junction that lies outside its canal.
             *     - `kit-lacks-instrument`: The technique needs an instrument that the kit has not.
             *     - `length-out-of-bounds`: A length that no tooth has.
             *     - `motion-not-accepted`: The technique is written for another motion than the instrument's.
             *     - `no-canals`: A plan without a canal.
             *     - `notation-missing`: A designation that does not say its notation.
             *     - `out-of-bounds`: A number lies outside the bounds of its quantity.
             *     - `override-not-possible`: A caution that nobody may override, or that is not there.
             *     - `reading-not-usable`: A reading that no length can be taken from.
             *     - `technique-not-usable`: A technique that breaks a rule of techniques, or that is not there.
             *     - `too-much-work`: Working it out would take more than one request may.
             *     - `unknown-tooth`: There is no such tooth in that notation.
             */
            422: {
                headers: {
                    /** @description Names the request. Tell it to whoever looks after the server. */
                    "X-Request-Id"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"] & {
                        /** @enum {unknown} */
                        type?: "/api/v1/problems/canals-do-not-fit" | "/api/v1/problems/charted-not-planned" | "/api/v1/problems/choice-not-possible" | "/api/v1/problems/factor-not-known" | "/api/v1/problems/instrument-not-described" | "/api/v1/problems/instrument-too-short" | "/api/v1/problems/junction-beyond-canal" | "/api/v1/problems/kit-lacks-instrument" | "/api/v1/problems/length-out-of-bounds" | "/api/v1/problems/motion-not-accepted" | "/api/v1/problems/no-canals" | "/api/v1/problems/notation-missing" | "/api/v1/problems/out-of-bounds" | "/api/v1/problems/override-not-possible" | "/api/v1/problems/reading-not-usable" | "/api/v1/problems/technique-not-usable" | "/api/v1/problems/too-much-work" | "/api/v1/problems/unknown-tooth";
                    };
                };
            };
            429: components["responses"]["429.too-often"];
            503: components["responses"]["503.busy.took-too-long"];
            default: components["responses"]["any-other"];
        };
    };
    compute_technique_check: {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        requestBody: {
            content: {
                "application/json": components["schemas"]["TechniqueTextRequest"];
            };
        };
        responses: {
            200: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["TechniqueChecked"];
                };
            };
            400: components["responses"]["400.not-understood.parse-error"];
            401: components["responses"]["401.key-refused.not-authenticated"];
            403: components["responses"]["403.token-missing"];
            408: components["responses"]["408.body-too-slow"];
            413: components["responses"]["413.body-too-long"];
            415: components["responses"]["415.unsupported-media-type"];
            422: components["responses"]["422.technique-not-usable"];
            429: components["responses"]["429.too-often"];
            503: components["responses"]["503.busy.took-too-long"];
            default: components["responses"]["any-other"];
        };
    };
    compute_tooth: {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        requestBody: {
            content: {
                "application/json": components["schemas"]["ToothNameRequest"];
            };
        };
        responses: {
            200: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["Tooth"];
                };
            };
            400: components["responses"]["400.not-understood.parse-error"];
            401: components["responses"]["401.key-refused.not-authenticated"];
            403: components["responses"]["403.token-missing"];
            408: components["responses"]["408.body-too-slow"];
            413: components["responses"]["413.body-too-long"];
            415: components["responses"]["415.unsupported-media-type"];
            422: components["responses"]["422.notation-missing.unknown-tooth"];
            429: components["responses"]["429.too-often"];
            503: components["responses"]["503.busy"];
            default: components["responses"]["any-other"];
        };
    };
    compute_two_views: {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        requestBody: {
            content: {
                "application/json": components["schemas"]["TwoViewsRequest"];
            };
        };
        responses: {
            200: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["TwoViewsRead"];
                };
            };
            400: components["responses"]["400.not-understood.parse-error"];
            401: components["responses"]["401.key-refused.not-authenticated"];
            403: components["responses"]["403.token-missing"];
            408: components["responses"]["408.body-too-slow"];
            413: components["responses"]["413.body-too-long"];
            415: components["responses"]["415.unsupported-media-type"];
            422: components["responses"]["422.choice-not-possible.out-of-bounds.views-do-not-fit"];
            429: components["responses"]["429.too-often"];
            503: components["responses"]["503.busy.took-too-long"];
            default: components["responses"]["any-other"];
        };
    };
    consents_list: {
        parameters: {
            query?: {
                /** @description Of the page, as `next` and `previous` have it. */
                cursor?: string;
                /** @description So many on a page; left out, all are on one. */
                limit?: number;
            };
            header?: {
                /** @description The ETag seen last, several of them, or `*`: 304 where nothing has changed (RFC 9110, 13.1.2). */
                "If-None-Match"?: string;
            };
            path?: never;
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            200: {
                headers: {
                    /** @description Changes with all that is shown; If-None-Match takes it, and If-Match where a change asks for it. */
                    ETag?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["ConsentList"];
                };
            };
            /** @description What is shown is what the ETag of If-None-Match is of. No body. */
            304: {
                headers: {
                    [name: string]: unknown;
                };
                content?: never;
            };
            400: components["responses"]["400.not-understood"];
            401: components["responses"]["401.key-refused.not-authenticated"];
            403: components["responses"]["403.key-opens-not"];
            412: components["responses"]["412.changed-since"];
            503: components["responses"]["503.busy"];
            default: components["responses"]["any-other"];
        };
    };
    consent_destroy: {
        parameters: {
            query?: never;
            header?: never;
            path: {
                consent_id: string;
            };
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            /** @description No response body */
            204: {
                headers: {
                    [name: string]: unknown;
                };
                content?: never;
            };
            400: components["responses"]["400.not-understood"];
            401: components["responses"]["401.key-refused.not-authenticated"];
            403: components["responses"]["403.key-opens-not.token-missing"];
            404: components["responses"]["404.not-found"];
            503: components["responses"]["503.busy"];
            default: components["responses"]["any-other"];
        };
    };
    difficulty_factors_list: {
        parameters: {
            query?: {
                /** @description Of the page, as `next` and `previous` have it. */
                cursor?: string;
                /** @description So many on a page; left out, all are on one. */
                limit?: number;
            };
            header?: {
                /** @description The ETag seen last, several of them, or `*`: 304 where nothing has changed (RFC 9110, 13.1.2). */
                "If-None-Match"?: string;
            };
            path?: never;
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            200: {
                headers: {
                    /** @description Changes with all that is shown; If-None-Match takes it, and If-Match where a change asks for it. */
                    ETag?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["DifficultyFactors"];
                };
            };
            /** @description What is shown is what the ETag of If-None-Match is of. No body. */
            304: {
                headers: {
                    [name: string]: unknown;
                };
                content?: never;
            };
            400: components["responses"]["400.not-understood"];
            401: components["responses"]["401.key-refused"];
            412: components["responses"]["412.changed-since"];
            429: components["responses"]["429.too-often"];
            503: components["responses"]["503.busy"];
            default: components["responses"]["any-other"];
        };
    };
    guide_retrieve: {
        parameters: {
            query?: never;
            header?: {
                /** @description The ETag seen last, several of them, or `*`: 304 where nothing has changed (RFC 9110, 13.1.2). */
                "If-None-Match"?: string;
            };
            path: {
                page: "changes" | "tour";
            };
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            /** @description Markdown (RFC 7763). */
            200: {
                headers: {
                    /** @description Changes with all that is shown; If-None-Match takes it, and If-Match where a change asks for it. */
                    ETag?: string;
                    [name: string]: unknown;
                };
                content: {
                    "text/markdown": string;
                };
            };
            /** @description What is shown is what the ETag of If-None-Match is of. No body. */
            304: {
                headers: {
                    [name: string]: unknown;
                };
                content?: never;
            };
            400: components["responses"]["400.not-understood"];
            401: components["responses"]["401.key-refused"];
            404: components["responses"]["404.not-found"];
            412: components["responses"]["412.changed-since"];
            429: components["responses"]["429.too-often"];
            503: components["responses"]["503.busy"];
            default: components["responses"]["any-other"];
        };
    };
    instrument_sizes_list: {
        parameters: {
            query?: {
                /** @description Of the page, as `next` and `previous` have it. */
                cursor?: string;
                /** @description So many on a page; left out, all are on one. */
                limit?: number;
            };
            header?: {
                /** @description The ETag seen last, several of them, or `*`: 304 where nothing has changed (RFC 9110, 13.1.2). */
                "If-None-Match"?: string;
            };
            path?: never;
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            200: {
                headers: {
                    /** @description Changes with all that is shown; If-None-Match takes it, and If-Match where a change asks for it. */
                    ETag?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["InstrumentSizes"];
                };
            };
            /** @description What is shown is what the ETag of If-None-Match is of. No body. */
            304: {
                headers: {
                    [name: string]: unknown;
                };
                content?: never;
            };
            400: components["responses"]["400.not-understood"];
            401: components["responses"]["401.key-refused"];
            412: components["responses"]["412.changed-since"];
            429: components["responses"]["429.too-often"];
            503: components["responses"]["503.busy"];
            default: components["responses"]["any-other"];
        };
    };
    join: {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        requestBody: {
            content: {
                "application/json": components["schemas"]["LinkGivenRequest"];
            };
        };
        responses: {
            200: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["SessionShown"];
                };
            };
            400: components["responses"]["400.not-understood.parse-error"];
            401: components["responses"]["401.key-refused.not-authenticated"];
            403: components["responses"]["403.key-opens-not.token-missing"];
            408: components["responses"]["408.body-too-slow"];
            409: components["responses"]["409.conflict"];
            410: components["responses"]["410.invitation-refused"];
            413: components["responses"]["413.body-too-long"];
            415: components["responses"]["415.unsupported-media-type"];
            422: components["responses"]["422.not-usable"];
            429: components["responses"]["429.too-many-tries"];
            503: components["responses"]["503.busy"];
            default: components["responses"]["any-other"];
        };
    };
    join_look: {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        requestBody: {
            content: {
                "application/json": components["schemas"]["LinkGivenRequest"];
            };
        };
        responses: {
            200: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["InvitationSeen"];
                };
            };
            400: components["responses"]["400.not-understood.parse-error"];
            401: components["responses"]["401.key-refused"];
            403: components["responses"]["403.key-opens-not.token-missing"];
            408: components["responses"]["408.body-too-slow"];
            410: components["responses"]["410.invitation-refused"];
            413: components["responses"]["413.body-too-long"];
            415: components["responses"]["415.unsupported-media-type"];
            429: components["responses"]["429.too-many-tries"];
            503: components["responses"]["503.busy"];
            default: components["responses"]["any-other"];
        };
    };
    join_new_account: {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        requestBody: {
            content: {
                "application/json": components["schemas"]["NewAccountGivenRequest"];
            };
        };
        responses: {
            200: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["SessionShown"];
                };
            };
            400: components["responses"]["400.not-understood.parse-error"];
            401: components["responses"]["401.key-refused"];
            403: components["responses"]["403.key-opens-not.token-missing"];
            408: components["responses"]["408.body-too-slow"];
            409: components["responses"]["409.conflict"];
            410: components["responses"]["410.invitation-refused"];
            413: components["responses"]["413.body-too-long"];
            415: components["responses"]["415.unsupported-media-type"];
            422: components["responses"]["422.not-usable"];
            429: components["responses"]["429.too-many-tries.too-often"];
            503: components["responses"]["503.busy.took-too-long"];
            default: components["responses"]["any-other"];
        };
    };
    junction_retrieve: {
        parameters: {
            query?: never;
            header?: {
                /** @description The ETag seen last, several of them, or `*`: 304 where nothing has changed (RFC 9110, 13.1.2). */
                "If-None-Match"?: string;
            };
            path: {
                reading_id: string;
            };
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            200: {
                headers: {
                    /** @description Changes with all that is shown; If-None-Match takes it, and If-Match where a change asks for it. */
                    ETag?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["JunctionShown"];
                };
            };
            /** @description What is shown is what the ETag of If-None-Match is of. No body. */
            304: {
                headers: {
                    [name: string]: unknown;
                };
                content?: never;
            };
            400: components["responses"]["400.not-understood"];
            401: components["responses"]["401.key-refused.not-authenticated"];
            403: components["responses"]["403.scope-missing"];
            404: components["responses"]["404.not-found"];
            412: components["responses"]["412.changed-since"];
            429: components["responses"]["429.too-often"];
            503: components["responses"]["503.busy"];
            default: components["responses"]["any-other"];
        };
    };
    junction_strike: {
        parameters: {
            query?: never;
            header?: {
                /** @description In quotation marks, up to 100 visible characters, such as a new UUID: sent again with the same key within a day, the same is not done again but answered as it was. 409, `still-under-way`, while the first goes on; 422, `idempotency-key-used-differently`, for anything else with the key. What was refused may be sent again. */
                "Idempotency-Key"?: string;
            };
            path: {
                reading_id: string;
            };
            cookie?: never;
        };
        requestBody: {
            content: {
                "application/json": components["schemas"]["StrikeGivenRequest"];
            };
        };
        responses: {
            200: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["CanalShown"];
                };
            };
            400: components["responses"]["400.not-understood.parse-error"];
            401: components["responses"]["401.key-refused.not-authenticated"];
            403: components["responses"]["403.not-allowed.scope-missing.token-missing"];
            404: components["responses"]["404.not-found"];
            408: components["responses"]["408.body-too-slow"];
            409: components["responses"]["409.still-under-way"];
            413: components["responses"]["413.body-too-long"];
            415: components["responses"]["415.unsupported-media-type"];
            422: components["responses"]["422.idempotency-key-used-differently"];
            429: components["responses"]["429.too-often"];
            503: components["responses"]["503.busy"];
            default: components["responses"]["any-other"];
        };
    };
    key_retrieve: {
        parameters: {
            query?: never;
            header?: {
                /** @description The ETag seen last, several of them, or `*`: 304 where nothing has changed (RFC 9110, 13.1.2). */
                "If-None-Match"?: string;
            };
            path?: never;
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            200: {
                headers: {
                    /** @description Changes with all that is shown; If-None-Match takes it, and If-Match where a change asks for it. */
                    ETag?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["OwnKeyShown"];
                };
            };
            /** @description What is shown is what the ETag of If-None-Match is of. No body. */
            304: {
                headers: {
                    [name: string]: unknown;
                };
                content?: never;
            };
            400: components["responses"]["400.not-understood"];
            401: components["responses"]["401.key-refused.not-authenticated"];
            404: components["responses"]["404.not-found"];
            412: components["responses"]["412.changed-since"];
            429: components["responses"]["429.too-often"];
            503: components["responses"]["503.busy"];
            default: components["responses"]["any-other"];
        };
    };
    keys_list: {
        parameters: {
            query?: {
                /** @description Of the page, as `next` and `previous` have it. */
                cursor?: string;
                /** @description So many on a page; left out, all are on one. */
                limit?: number;
            };
            header?: {
                /** @description The ETag seen last, several of them, or `*`: 304 where nothing has changed (RFC 9110, 13.1.2). */
                "If-None-Match"?: string;
            };
            path?: never;
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            200: {
                headers: {
                    /** @description Changes with all that is shown; If-None-Match takes it, and If-Match where a change asks for it. */
                    ETag?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["KeyList"];
                };
            };
            /** @description What is shown is what the ETag of If-None-Match is of. No body. */
            304: {
                headers: {
                    [name: string]: unknown;
                };
                content?: never;
            };
            400: components["responses"]["400.not-understood"];
            401: components["responses"]["401.key-refused.not-authenticated"];
            403: components["responses"]["403.key-opens-not"];
            412: components["responses"]["412.changed-since"];
            503: components["responses"]["503.busy"];
            default: components["responses"]["any-other"];
        };
    };
    keys_create: {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        requestBody: {
            content: {
                "application/json": components["schemas"]["KeyGivenRequest"];
            };
        };
        responses: {
            201: {
                headers: {
                    /** @description Where what was made lies. */
                    Location?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["KeyWithText"];
                };
            };
            400: components["responses"]["400.not-understood.parse-error"];
            401: components["responses"]["401.key-refused.not-authenticated"];
            403: components["responses"]["403.key-opens-not.token-missing"];
            408: components["responses"]["408.body-too-slow"];
            409: components["responses"]["409.conflict"];
            413: components["responses"]["413.body-too-long"];
            415: components["responses"]["415.unsupported-media-type"];
            422: components["responses"]["422.not-usable.password-wrong"];
            429: components["responses"]["429.too-many-tries.too-often"];
            503: components["responses"]["503.busy.took-too-long"];
            default: components["responses"]["any-other"];
        };
    };
    key_of_yours_retrieve: {
        parameters: {
            query?: never;
            header?: {
                /** @description The ETag seen last, several of them, or `*`: 304 where nothing has changed (RFC 9110, 13.1.2). */
                "If-None-Match"?: string;
            };
            path: {
                key_id: string;
            };
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            200: {
                headers: {
                    /** @description Changes with all that is shown; If-None-Match takes it, and If-Match where a change asks for it. */
                    ETag?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["KeyShown"];
                };
            };
            /** @description What is shown is what the ETag of If-None-Match is of. No body. */
            304: {
                headers: {
                    [name: string]: unknown;
                };
                content?: never;
            };
            400: components["responses"]["400.not-understood"];
            401: components["responses"]["401.key-refused.not-authenticated"];
            403: components["responses"]["403.key-opens-not"];
            404: components["responses"]["404.not-found"];
            412: components["responses"]["412.changed-since"];
            503: components["responses"]["503.busy"];
            default: components["responses"]["any-other"];
        };
    };
    key_destroy: {
        parameters: {
            query?: never;
            header?: never;
            path: {
                key_id: string;
            };
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            /** @description No response body */
            204: {
                headers: {
                    [name: string]: unknown;
                };
                content?: never;
            };
            400: components["responses"]["400.not-understood"];
            401: components["responses"]["401.key-refused.not-authenticated"];
            403: components["responses"]["403.key-opens-not.token-missing"];
            404: components["responses"]["404.not-found"];
            503: components["responses"]["503.busy"];
            default: components["responses"]["any-other"];
        };
    };
    one_time_code_retrieve: {
        parameters: {
            query?: never;
            header?: {
                /** @description The ETag seen last, several of them, or `*`: 304 where nothing has changed (RFC 9110, 13.1.2). */
                "If-None-Match"?: string;
            };
            path?: never;
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            200: {
                headers: {
                    /** @description Changes with all that is shown; If-None-Match takes it, and If-Match where a change asks for it. */
                    ETag?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["OneTimeCodeShown"];
                };
            };
            /** @description What is shown is what the ETag of If-None-Match is of. No body. */
            304: {
                headers: {
                    [name: string]: unknown;
                };
                content?: never;
            };
            400: components["responses"]["400.not-understood"];
            401: components["responses"]["401.key-refused.not-authenticated"];
            403: components["responses"]["403.key-opens-not"];
            412: components["responses"]["412.changed-since"];
            503: components["responses"]["503.busy"];
            default: components["responses"]["any-other"];
        };
    };
    one_time_code_create: {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        requestBody: {
            content: {
                "application/json": components["schemas"]["PasswordGivenRequest"];
            };
        };
        responses: {
            201: {
                headers: {
                    /** @description Where what was made lies. */
                    Location?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["CodeSecretShown"];
                };
            };
            400: components["responses"]["400.not-understood.parse-error"];
            401: components["responses"]["401.key-refused.not-authenticated"];
            403: components["responses"]["403.key-opens-not.not-allowed.token-missing"];
            408: components["responses"]["408.body-too-slow"];
            413: components["responses"]["413.body-too-long"];
            415: components["responses"]["415.unsupported-media-type"];
            422: components["responses"]["422.password-wrong"];
            429: components["responses"]["429.too-many-tries.too-often"];
            503: components["responses"]["503.busy.took-too-long"];
            default: components["responses"]["any-other"];
        };
    };
    one_time_code_destroy: {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            /** @description No response body */
            204: {
                headers: {
                    [name: string]: unknown;
                };
                content?: never;
            };
            400: components["responses"]["400.not-understood"];
            401: components["responses"]["401.key-refused.not-authenticated"];
            403: components["responses"]["403.key-opens-not.token-missing"];
            503: components["responses"]["503.busy"];
            default: components["responses"]["any-other"];
        };
    };
    one_time_code_confirm: {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        requestBody: {
            content: {
                "application/json": components["schemas"]["CodeGivenRequest"];
            };
        };
        responses: {
            200: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["OneTimeCodeShown"];
                };
            };
            400: components["responses"]["400.not-understood.parse-error"];
            401: components["responses"]["401.key-refused.not-authenticated"];
            403: components["responses"]["403.key-opens-not.token-missing"];
            408: components["responses"]["408.body-too-slow"];
            409: components["responses"]["409.conflict"];
            413: components["responses"]["413.body-too-long"];
            415: components["responses"]["415.unsupported-media-type"];
            422: components["responses"]["422.code-refused"];
            429: components["responses"]["429.too-many-tries"];
            503: components["responses"]["503.busy"];
            default: components["responses"]["any-other"];
        };
    };
    override_retrieve: {
        parameters: {
            query?: {
                /** @description Only these fields, with a comma between two; of a list, in each of its rows. */
                fields?: ("id" | "code" | "canal" | "reason" | "final_size" | "supervisor" | "at" | "withdrawn_at" | "withdrawn_by")[];
            };
            header?: {
                /** @description The ETag seen last, several of them, or `*`: 304 where nothing has changed (RFC 9110, 13.1.2). */
                "If-None-Match"?: string;
            };
            path: {
                override_id: string;
            };
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            200: {
                headers: {
                    /** @description Changes with all that is shown; If-None-Match takes it, and If-Match where a change asks for it. */
                    ETag?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["OverrideShown"];
                };
            };
            /** @description What is shown is what the ETag of If-None-Match is of. No body. */
            304: {
                headers: {
                    [name: string]: unknown;
                };
                content?: never;
            };
            400: components["responses"]["400.not-understood"];
            401: components["responses"]["401.key-refused.not-authenticated"];
            403: components["responses"]["403.scope-missing"];
            404: components["responses"]["404.not-found"];
            412: components["responses"]["412.changed-since"];
            429: components["responses"]["429.too-often"];
            503: components["responses"]["503.busy"];
            default: components["responses"]["any-other"];
        };
    };
    override_withdraw: {
        parameters: {
            query?: never;
            header?: {
                /** @description In quotation marks, up to 100 visible characters, such as a new UUID: sent again with the same key within a day, the same is not done again but answered as it was. 409, `still-under-way`, while the first goes on; 422, `idempotency-key-used-differently`, for anything else with the key. What was refused may be sent again. */
                "Idempotency-Key"?: string;
            };
            path: {
                override_id: string;
            };
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            200: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["OverrideShown"];
                };
            };
            400: components["responses"]["400.not-understood"];
            401: components["responses"]["401.key-refused.not-authenticated"];
            403: components["responses"]["403.not-allowed.scope-missing.token-missing"];
            404: components["responses"]["404.not-found"];
            409: components["responses"]["409.still-under-way"];
            422: components["responses"]["422.idempotency-key-used-differently"];
            429: components["responses"]["429.too-often"];
            503: components["responses"]["503.busy"];
            default: components["responses"]["any-other"];
        };
    };
    plan_version_retrieve: {
        parameters: {
            query?: {
                /** @description These fields too, with a comma between two: they are heavy and left out unless named here or in `fields`. */
                expand?: ("choices" | "plan" | "given")[];
                /** @description Only these fields, with a comma between two; of a list, in each of its rows. */
                fields?: ("id" | "case_id" | "number" | "state" | "stale" | "hash" | "intent_hash" | "author" | "kit_id" | "technique" | "stops" | "cautions" | "planner_version" | "created_at" | "submitted_at" | "decided_at" | "not_released" | "carried_from" | "reviews" | "revocations" | "status" | "texts" | "choices" | "plan" | "given")[];
            };
            header?: {
                /** @description The ETag seen last, several of them, or `*`: 304 where nothing has changed (RFC 9110, 13.1.2). */
                "If-None-Match"?: string;
            };
            path: {
                version_id: string;
            };
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            200: {
                headers: {
                    /** @description Changes with all that is shown; If-None-Match takes it, and If-Match where a change asks for it. */
                    ETag?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["VersionShown"];
                };
            };
            /** @description What is shown is what the ETag of If-None-Match is of. No body. */
            304: {
                headers: {
                    [name: string]: unknown;
                };
                content?: never;
            };
            400: components["responses"]["400.not-understood"];
            401: components["responses"]["401.key-refused.not-authenticated"];
            403: components["responses"]["403.scope-missing"];
            404: components["responses"]["404.not-found"];
            412: components["responses"]["412.changed-since"];
            429: components["responses"]["429.too-often"];
            503: components["responses"]["503.busy"];
            default: components["responses"]["any-other"];
        };
    };
    plan_version_changes: {
        parameters: {
            query?: {
                /** @description Number of the earlier version; default: last decided on. */
                against?: number;
            };
            header?: {
                /** @description The ETag seen last, several of them, or `*`: 304 where nothing has changed (RFC 9110, 13.1.2). */
                "If-None-Match"?: string;
            };
            path: {
                version_id: string;
            };
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            200: {
                headers: {
                    /** @description Changes with all that is shown; If-None-Match takes it, and If-Match where a change asks for it. */
                    ETag?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["ChangesShown"];
                };
            };
            /** @description What is shown is what the ETag of If-None-Match is of. No body. */
            304: {
                headers: {
                    [name: string]: unknown;
                };
                content?: never;
            };
            400: components["responses"]["400.not-understood"];
            401: components["responses"]["401.key-refused.not-authenticated"];
            403: components["responses"]["403.scope-missing"];
            404: components["responses"]["404.not-found"];
            412: components["responses"]["412.changed-since"];
            422: components["responses"]["422.not-usable"];
            429: components["responses"]["429.too-often"];
            503: components["responses"]["503.busy"];
            default: components["responses"]["any-other"];
        };
    };
    plan_version_release: {
        parameters: {
            query?: {
                /** @description These fields too, with a comma between two: they are heavy and left out unless named here or in `fields`. */
                expand?: ("choices" | "plan" | "given")[];
            };
            header: {
                /** @description In quotation marks, up to 100 visible characters, such as a new UUID: sent again with the same key within a day, the same is not done again but answered as it was. 409, `still-under-way`, while the first goes on; 422, `idempotency-key-used-differently`, for anything else with the key. What was refused may be sent again. */
                "Idempotency-Key"?: string;
                /** @description The hash that was on the screen, as ETag. */
                "If-Match": string;
            };
            path: {
                version_id: string;
            };
            cookie?: never;
        };
        requestBody: {
            content: {
                "application/json": components["schemas"]["ReleaseGivenRequest"];
            };
        };
        responses: {
            200: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["VersionShown"];
                };
            };
            400: components["responses"]["400.not-understood.parse-error"];
            401: components["responses"]["401.key-refused.not-authenticated"];
            403: components["responses"]["403.not-allowed.scope-missing.token-missing"];
            404: components["responses"]["404.not-found"];
            408: components["responses"]["408.body-too-slow"];
            409: components["responses"]["409.conflict.plan-stale.still-under-way"];
            412: components["responses"]["412.changed-since"];
            413: components["responses"]["413.body-too-long"];
            415: components["responses"]["415.unsupported-media-type"];
            422: components["responses"]["422.idempotency-key-used-differently.no-such-canal.not-usable"];
            428: components["responses"]["428.precondition-missing"];
            429: components["responses"]["429.too-often"];
            503: components["responses"]["503.busy"];
            default: components["responses"]["any-other"];
        };
    };
    reviews_create: {
        parameters: {
            query?: never;
            header: {
                /** @description In quotation marks, up to 100 visible characters, such as a new UUID: sent again with the same key within a day, the same is not done again but answered as it was. 409, `still-under-way`, while the first goes on; 422, `idempotency-key-used-differently`, for anything else with the key. What was refused may be sent again. */
                "Idempotency-Key"?: string;
                /** @description The hash that was on the screen, as ETag. */
                "If-Match": string;
            };
            path: {
                version_id: string;
            };
            cookie?: never;
        };
        requestBody: {
            content: {
                "application/json": components["schemas"]["ReviewGivenRequest"];
            };
        };
        responses: {
            200: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["ReviewShown"];
                };
            };
            201: {
                headers: {
                    /** @description Where what was made lies. */
                    Location?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["ReviewShown"];
                };
            };
            400: components["responses"]["400.not-understood.parse-error"];
            401: components["responses"]["401.key-refused.not-authenticated"];
            403: components["responses"]["403.not-allowed.scope-missing.token-missing"];
            404: components["responses"]["404.not-found"];
            408: components["responses"]["408.body-too-slow"];
            /**
             * @description - `id-used-differently`: An id of the sender's was used before for something else.
             *     - `move-not-possible`: A plan that is where it is cannot be moved so.
             *     - `plan-stale`: The case has changed since the plan was made.
             *     - `still-under-way`: The first request with this `Idempotency-Key` is not answered yet.
             */
            409: {
                headers: {
                    /** @description Names the request. Tell it to whoever looks after the server. */
                    "X-Request-Id"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"] & {
                        /** @enum {unknown} */
                        type?: "/api/v1/problems/id-used-differently" | "/api/v1/problems/move-not-possible" | "/api/v1/problems/plan-stale" | "/api/v1/problems/still-under-way";
                    };
                };
            };
            412: components["responses"]["412.changed-since"];
            413: components["responses"]["413.body-too-long"];
            415: components["responses"]["415.unsupported-media-type"];
            /**
             * @description - `idempotency-key-used-differently`: The `Idempotency-Key` came before, within a day, with another body, to another address or on another condition.
             *     - `length-out-of-bounds`: A length that no tooth has.
             *     - `no-such-canal`: The plan has no canal of that name.
             *     - `not-acknowledged`: A plan is approved while a caution asks to be acknowledged.
             *     - `not-usable`: Good data that cannot be used here.
             *     - `nothing-said`: A plan is returned without a word.
             */
            422: {
                headers: {
                    /** @description Names the request. Tell it to whoever looks after the server. */
                    "X-Request-Id"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"] & {
                        /** @enum {unknown} */
                        type?: "/api/v1/problems/idempotency-key-used-differently" | "/api/v1/problems/length-out-of-bounds" | "/api/v1/problems/no-such-canal" | "/api/v1/problems/not-acknowledged" | "/api/v1/problems/not-usable" | "/api/v1/problems/nothing-said";
                    };
                };
            };
            428: components["responses"]["428.precondition-missing"];
            429: components["responses"]["429.too-often"];
            503: components["responses"]["503.busy"];
            default: components["responses"]["any-other"];
        };
    };
    review_retrieve: {
        parameters: {
            query?: never;
            header?: {
                /** @description The ETag seen last, several of them, or `*`: 304 where nothing has changed (RFC 9110, 13.1.2). */
                "If-None-Match"?: string;
            };
            path: {
                review_id: string;
                version_id: string;
            };
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            200: {
                headers: {
                    /** @description Changes with all that is shown; If-None-Match takes it, and If-Match where a change asks for it. */
                    ETag?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["ReviewShown"];
                };
            };
            /** @description What is shown is what the ETag of If-None-Match is of. No body. */
            304: {
                headers: {
                    [name: string]: unknown;
                };
                content?: never;
            };
            400: components["responses"]["400.not-understood"];
            401: components["responses"]["401.key-refused.not-authenticated"];
            403: components["responses"]["403.scope-missing"];
            404: components["responses"]["404.not-found"];
            412: components["responses"]["412.changed-since"];
            429: components["responses"]["429.too-often"];
            503: components["responses"]["503.busy"];
            default: components["responses"]["any-other"];
        };
    };
    plan_version_revoke: {
        parameters: {
            query?: {
                /** @description These fields too, with a comma between two: they are heavy and left out unless named here or in `fields`. */
                expand?: ("choices" | "plan" | "given")[];
            };
            header: {
                /** @description In quotation marks, up to 100 visible characters, such as a new UUID: sent again with the same key within a day, the same is not done again but answered as it was. 409, `still-under-way`, while the first goes on; 422, `idempotency-key-used-differently`, for anything else with the key. What was refused may be sent again. */
                "Idempotency-Key"?: string;
                /** @description The hash that was on the screen, as ETag. */
                "If-Match": string;
            };
            path: {
                version_id: string;
            };
            cookie?: never;
        };
        requestBody: {
            content: {
                "application/json": components["schemas"]["RevokeGivenRequest"];
            };
        };
        responses: {
            200: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["VersionShown"];
                };
            };
            201: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["VersionShown"];
                };
            };
            400: components["responses"]["400.not-understood.parse-error"];
            401: components["responses"]["401.key-refused.not-authenticated"];
            403: components["responses"]["403.not-allowed.scope-missing.token-missing"];
            404: components["responses"]["404.not-found"];
            408: components["responses"]["408.body-too-slow"];
            409: components["responses"]["409.conflict.id-used-differently.still-under-way"];
            412: components["responses"]["412.changed-since"];
            413: components["responses"]["413.body-too-long"];
            415: components["responses"]["415.unsupported-media-type"];
            422: components["responses"]["422.idempotency-key-used-differently.nothing-said"];
            428: components["responses"]["428.precondition-missing"];
            429: components["responses"]["429.too-often"];
            503: components["responses"]["503.busy"];
            default: components["responses"]["any-other"];
        };
    };
    plan_version_submit: {
        parameters: {
            query?: {
                /** @description These fields too, with a comma between two: they are heavy and left out unless named here or in `fields`. */
                expand?: ("choices" | "plan" | "given")[];
            };
            header?: {
                /** @description In quotation marks, up to 100 visible characters, such as a new UUID: sent again with the same key within a day, the same is not done again but answered as it was. 409, `still-under-way`, while the first goes on; 422, `idempotency-key-used-differently`, for anything else with the key. What was refused may be sent again. */
                "Idempotency-Key"?: string;
                /** @description The hash that was on the screen, as ETag. */
                "If-Match"?: string;
            };
            path: {
                version_id: string;
            };
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            200: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["VersionShown"];
                };
            };
            400: components["responses"]["400.not-understood"];
            401: components["responses"]["401.key-refused.not-authenticated"];
            403: components["responses"]["403.not-allowed.scope-missing.token-missing"];
            404: components["responses"]["404.not-found"];
            /**
             * @description - `empty-plan`: No canal of the plan has a length.
             *     - `move-not-possible`: A plan that is where it is cannot be moved so.
             *     - `plan-stale`: The case has changed since the plan was made.
             *     - `reason-missing`: A final size lies outside the advised range, and no reason is given.
             *     - `still-under-way`: The first request with this `Idempotency-Key` is not answered yet.
             */
            409: {
                headers: {
                    /** @description Names the request. Tell it to whoever looks after the server. */
                    "X-Request-Id"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"] & {
                        /** @enum {unknown} */
                        type?: "/api/v1/problems/empty-plan" | "/api/v1/problems/move-not-possible" | "/api/v1/problems/plan-stale" | "/api/v1/problems/reason-missing" | "/api/v1/problems/still-under-way";
                    };
                };
            };
            412: components["responses"]["412.changed-since"];
            422: components["responses"]["422.idempotency-key-used-differently"];
            429: components["responses"]["429.too-often"];
            503: components["responses"]["503.busy"];
            default: components["responses"]["any-other"];
        };
    };
    plan_version_texts: {
        parameters: {
            query?: never;
            header?: {
                /** @description The ETag seen last, several of them, or `*`: 304 where nothing has changed (RFC 9110, 13.1.2). */
                "If-None-Match"?: string;
            };
            path: {
                hash_: string;
                version_id: string;
            };
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            200: {
                headers: {
                    /** @description Changes with all that is shown; If-None-Match takes it, and If-Match where a change asks for it. */
                    ETag?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["TextsShown"];
                };
            };
            /** @description What is shown is what the ETag of If-None-Match is of. No body. */
            304: {
                headers: {
                    [name: string]: unknown;
                };
                content?: never;
            };
            400: components["responses"]["400.not-understood"];
            401: components["responses"]["401.key-refused.not-authenticated"];
            403: components["responses"]["403.scope-missing"];
            404: components["responses"]["404.not-found"];
            412: components["responses"]["412.changed-since"];
            429: components["responses"]["429.too-often"];
            503: components["responses"]["503.busy"];
            default: components["responses"]["any-other"];
        };
    };
    plan_version_withdraw: {
        parameters: {
            query?: {
                /** @description These fields too, with a comma between two: they are heavy and left out unless named here or in `fields`. */
                expand?: ("choices" | "plan" | "given")[];
            };
            header?: {
                /** @description In quotation marks, up to 100 visible characters, such as a new UUID: sent again with the same key within a day, the same is not done again but answered as it was. 409, `still-under-way`, while the first goes on; 422, `idempotency-key-used-differently`, for anything else with the key. What was refused may be sent again. */
                "Idempotency-Key"?: string;
            };
            path: {
                version_id: string;
            };
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            200: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["VersionShown"];
                };
            };
            400: components["responses"]["400.not-understood"];
            401: components["responses"]["401.key-refused.not-authenticated"];
            403: components["responses"]["403.not-allowed.scope-missing.token-missing"];
            404: components["responses"]["404.not-found"];
            409: components["responses"]["409.move-not-possible.still-under-way"];
            422: components["responses"]["422.idempotency-key-used-differently"];
            429: components["responses"]["429.too-often"];
            503: components["responses"]["503.busy"];
            default: components["responses"]["any-other"];
        };
    };
    work_sheet_pdf: {
        parameters: {
            query?: never;
            header?: {
                /** @description The ETag seen last, several of them, or `*`: 304 where nothing has changed (RFC 9110, 13.1.2). */
                "If-None-Match"?: string;
            };
            path: {
                version_id: string;
            };
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            200: {
                headers: {
                    /** @description Changes with all that is shown; If-None-Match takes it, and If-Match where a change asks for it. */
                    ETag?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/pdf": string;
                };
            };
            /** @description What is shown is what the ETag of If-None-Match is of. No body. */
            304: {
                headers: {
                    [name: string]: unknown;
                };
                content?: never;
            };
            400: components["responses"]["400.not-understood"];
            401: components["responses"]["401.key-refused.not-authenticated"];
            403: components["responses"]["403.scope-missing"];
            404: components["responses"]["404.not-found"];
            412: components["responses"]["412.changed-since"];
            429: components["responses"]["429.too-often"];
            503: components["responses"]["503.busy.took-too-long"];
            default: components["responses"]["any-other"];
        };
    };
    practice_exercise_retrieve: {
        parameters: {
            query?: never;
            header?: {
                /** @description The ETag seen last, several of them, or `*`: 304 where nothing has changed (RFC 9110, 13.1.2). */
                "If-None-Match"?: string;
            };
            path: {
                exercise_id: string;
            };
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            200: {
                headers: {
                    /** @description Changes with all that is shown; If-None-Match takes it, and If-Match where a change asks for it. */
                    ETag?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["ExerciseShown"];
                };
            };
            /** @description What is shown is what the ETag of If-None-Match is of. No body. */
            304: {
                headers: {
                    [name: string]: unknown;
                };
                content?: never;
            };
            400: components["responses"]["400.not-understood"];
            401: components["responses"]["401.key-refused.not-authenticated"];
            403: components["responses"]["403.key-opens-not"];
            404: components["responses"]["404.not-found"];
            412: components["responses"]["412.changed-since"];
            503: components["responses"]["503.busy"];
            default: components["responses"]["any-other"];
        };
    };
    practice_acts_create: {
        parameters: {
            query?: never;
            header: {
                /** @description In quotation marks, up to 100 visible characters, such as a new UUID: sent again with the same key within a day, the same is not done again but answered as it was. 409, `still-under-way`, while the first goes on; 422, `idempotency-key-used-differently`, for anything else with the key. What was refused may be sent again. */
                "Idempotency-Key"?: string;
                /** @description The ETag of the exercise as you saw it. */
                "If-Match": string;
            };
            path: {
                exercise_id: string;
            };
            cookie?: never;
        };
        requestBody: {
            content: {
                "application/json": components["schemas"]["ActGivenRequest"];
            };
        };
        responses: {
            200: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["ActShown"];
                };
            };
            201: {
                headers: {
                    /** @description Where what was made lies. */
                    Location?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["ActShown"];
                };
            };
            400: components["responses"]["400.not-understood.parse-error"];
            401: components["responses"]["401.key-refused.not-authenticated"];
            403: components["responses"]["403.key-opens-not.not-allowed.token-missing"];
            404: components["responses"]["404.not-found"];
            408: components["responses"]["408.body-too-slow"];
            409: components["responses"]["409.conflict.id-used-differently.still-under-way"];
            412: components["responses"]["412.changed-since"];
            413: components["responses"]["413.body-too-long"];
            415: components["responses"]["415.unsupported-media-type"];
            422: components["responses"]["422.act-refused.idempotency-key-used-differently.out-of-bounds"];
            428: components["responses"]["428.precondition-missing"];
            429: components["responses"]["429.too-often"];
            503: components["responses"]["503.busy.took-too-long"];
            default: components["responses"]["any-other"];
        };
    };
    practice_exercise_end: {
        parameters: {
            query?: never;
            header: {
                /** @description In quotation marks, up to 100 visible characters, such as a new UUID: sent again with the same key within a day, the same is not done again but answered as it was. 409, `still-under-way`, while the first goes on; 422, `idempotency-key-used-differently`, for anything else with the key. What was refused may be sent again. */
                "Idempotency-Key"?: string;
                /** @description The ETag of the exercise as you saw it. */
                "If-Match": string;
            };
            path: {
                exercise_id: string;
            };
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            200: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["ExerciseShown"];
                };
            };
            400: components["responses"]["400.not-understood"];
            401: components["responses"]["401.key-refused.not-authenticated"];
            403: components["responses"]["403.key-opens-not.not-allowed.token-missing"];
            404: components["responses"]["404.not-found"];
            409: components["responses"]["409.still-under-way"];
            412: components["responses"]["412.changed-since"];
            422: components["responses"]["422.idempotency-key-used-differently"];
            428: components["responses"]["428.precondition-missing"];
            429: components["responses"]["429.too-often"];
            503: components["responses"]["503.busy.took-too-long"];
            default: components["responses"]["any-other"];
        };
    };
    problems_list: {
        parameters: {
            query?: {
                /** @description Of the page, as `next` and `previous` have it. */
                cursor?: string;
                /** @description So many on a page; left out, all are on one. */
                limit?: number;
            };
            header?: {
                /** @description The ETag seen last, several of them, or `*`: 304 where nothing has changed (RFC 9110, 13.1.2). */
                "If-None-Match"?: string;
            };
            path?: never;
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            200: {
                headers: {
                    /** @description Changes with all that is shown; If-None-Match takes it, and If-Match where a change asks for it. */
                    ETag?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["ProblemCodes"];
                };
            };
            /** @description What is shown is what the ETag of If-None-Match is of. No body. */
            304: {
                headers: {
                    [name: string]: unknown;
                };
                content?: never;
            };
            400: components["responses"]["400.not-understood"];
            401: components["responses"]["401.key-refused"];
            412: components["responses"]["412.changed-since"];
            429: components["responses"]["429.too-often"];
            503: components["responses"]["503.busy"];
            default: components["responses"]["any-other"];
        };
    };
    problem_retrieve: {
        parameters: {
            query?: never;
            header?: {
                /** @description The ETag seen last, several of them, or `*`: 304 where nothing has changed (RFC 9110, 13.1.2). */
                "If-None-Match"?: string;
            };
            path: {
                code: string;
            };
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            200: {
                headers: {
                    /** @description Changes with all that is shown; If-None-Match takes it, and If-Match where a change asks for it. */
                    ETag?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["ProblemCode"];
                };
            };
            /** @description What is shown is what the ETag of If-None-Match is of. No body. */
            304: {
                headers: {
                    [name: string]: unknown;
                };
                content?: never;
            };
            400: components["responses"]["400.not-understood"];
            401: components["responses"]["401.key-refused"];
            404: components["responses"]["404.not-found"];
            412: components["responses"]["412.changed-since"];
            429: components["responses"]["429.too-often"];
            503: components["responses"]["503.busy"];
            default: components["responses"]["any-other"];
        };
    };
    programme_retrieve: {
        parameters: {
            query?: {
                /** @description Only these fields, with a comma between two; of a list, in each of its rows. */
                fields?: ("id" | "name" | "invented" | "role" | "supervisors" | "thresholds")[];
            };
            header?: {
                /** @description The ETag seen last, several of them, or `*`: 304 where nothing has changed (RFC 9110, 13.1.2). */
                "If-None-Match"?: string;
            };
            path: {
                programme_id: string;
            };
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            200: {
                headers: {
                    /** @description Changes with all that is shown; If-None-Match takes it, and If-Match where a change asks for it. */
                    ETag?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["ProgrammeShown"];
                };
            };
            /** @description What is shown is what the ETag of If-None-Match is of. No body. */
            304: {
                headers: {
                    [name: string]: unknown;
                };
                content?: never;
            };
            400: components["responses"]["400.not-understood"];
            401: components["responses"]["401.key-refused.not-authenticated"];
            403: components["responses"]["403.scope-missing"];
            404: components["responses"]["404.not-found"];
            412: components["responses"]["412.changed-since"];
            429: components["responses"]["429.too-often"];
            503: components["responses"]["503.busy"];
            default: components["responses"]["any-other"];
        };
    };
    cases_list: {
        parameters: {
            query?: {
                /** @description As in `next` or `previous`. */
                cursor?: string;
                /** @description For services: the key that yours knows it by. */
                external_id?: string;
                /** @description Only these fields, with a comma between two; of a list, in each of its rows. */
                fields?: ("id" | "programme_id" | "external_id" | "patient_alias" | "tooth" | "setting" | "student" | "supervisor" | "created_at" | "revision" | "status" | "version")[];
                /** @description Those of students who are in the group now, by its whole name. */
                group?: string;
                /** @description So many on a page. */
                limit?: number;
                /** @description Where they are worked. */
                setting?: "block" | "extracted" | "clinic";
                /** @description Where the plan stands, as in `status`. */
                state?: "none" | "draft" | "waiting" | "approved" | "returned" | "revoked" | "approval_void";
                /** @description Whose cases. */
                student_id?: string;
                /** @description Whom they were given to. */
                supervisor_id?: string;
                /** @description ISO 3950 designation. */
                tooth?: string;
                /** @description Those of which something was changed, decided or done then or later. What is being written just now has its time already: ask with a minute of overlap. */
                updated_since?: string;
            };
            header?: {
                /** @description The ETag seen last, several of them, or `*`: 304 where nothing has changed (RFC 9110, 13.1.2). */
                "If-None-Match"?: string;
            };
            path: {
                programme_id: string;
            };
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            200: {
                headers: {
                    /** @description Changes with all that is shown; If-None-Match takes it, and If-Match where a change asks for it. */
                    ETag?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["CasePage"];
                };
            };
            /** @description What is shown is what the ETag of If-None-Match is of. No body. */
            304: {
                headers: {
                    [name: string]: unknown;
                };
                content?: never;
            };
            400: components["responses"]["400.not-understood"];
            401: components["responses"]["401.key-refused.not-authenticated"];
            403: components["responses"]["403.not-allowed.scope-missing"];
            404: components["responses"]["404.not-found"];
            412: components["responses"]["412.changed-since"];
            429: components["responses"]["429.too-often"];
            503: components["responses"]["503.busy"];
            default: components["responses"]["any-other"];
        };
    };
    cases_create: {
        parameters: {
            query?: never;
            header?: {
                /** @description In quotation marks, up to 100 visible characters, such as a new UUID: sent again with the same key within a day, the same is not done again but answered as it was. 409, `still-under-way`, while the first goes on; 422, `idempotency-key-used-differently`, for anything else with the key. What was refused may be sent again. */
                "Idempotency-Key"?: string;
            };
            path: {
                programme_id: string;
            };
            cookie?: never;
        };
        requestBody: {
            content: {
                "application/json": components["schemas"]["CaseGivenRequest"];
            };
        };
        responses: {
            200: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["CaseShown"];
                };
            };
            201: {
                headers: {
                    /** @description Where what was made lies. */
                    Location?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["CaseShown"];
                };
            };
            400: components["responses"]["400.not-understood.parse-error"];
            401: components["responses"]["401.key-refused.not-authenticated"];
            403: components["responses"]["403.not-allowed.scope-missing.token-missing"];
            404: components["responses"]["404.not-found"];
            408: components["responses"]["408.body-too-slow"];
            409: components["responses"]["409.id-used-differently.still-under-way"];
            413: components["responses"]["413.body-too-long"];
            415: components["responses"]["415.unsupported-media-type"];
            /**
             * @description - `alias-looks-like-a-name`: The alias may be a name. It is asked about once: whoever says that it is none has it taken.
             *     - `alias-refused`: The alias of a patient holds what an alias must not hold.
             *     - `idempotency-key-used-differently`: The `Idempotency-Key` came before, within a day, with another body, to another address or on another condition.
             *     - `not-usable`: Good data that cannot be used here.
             *     - `notation-missing`: A designation that does not say its notation.
             *     - `unknown-tooth`: There is no such tooth in that notation.
             */
            422: {
                headers: {
                    /** @description Names the request. Tell it to whoever looks after the server. */
                    "X-Request-Id"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"] & {
                        /** @enum {unknown} */
                        type?: "/api/v1/problems/alias-looks-like-a-name" | "/api/v1/problems/alias-refused" | "/api/v1/problems/idempotency-key-used-differently" | "/api/v1/problems/not-usable" | "/api/v1/problems/notation-missing" | "/api/v1/problems/unknown-tooth";
                    };
                };
            };
            429: components["responses"]["429.too-often"];
            503: components["responses"]["503.busy"];
            default: components["responses"]["any-other"];
        };
    };
    case_by_external_id_retrieve: {
        parameters: {
            query?: {
                /** @description Only these fields, with a comma between two; of a list, in each of its rows. */
                fields?: ("id" | "programme_id" | "external_id" | "patient_alias" | "tooth" | "setting" | "student" | "supervisor" | "created_at" | "revision" | "status" | "version" | "notation" | "designation" | "roots" | "canals" | "overrides" | "isolated" | "root_filled" | "perforation" | "anatomy" | "factors")[];
            };
            header?: {
                /** @description The ETag seen last, several of them, or `*`: 304 where nothing has changed (RFC 9110, 13.1.2). */
                "If-None-Match"?: string;
            };
            path: {
                external_id: string;
                programme_id: string;
            };
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            200: {
                headers: {
                    /** @description Changes with all that is shown; If-None-Match takes it, and If-Match where a change asks for it. */
                    ETag?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["CaseShown"];
                };
            };
            /** @description What is shown is what the ETag of If-None-Match is of. No body. */
            304: {
                headers: {
                    [name: string]: unknown;
                };
                content?: never;
            };
            400: components["responses"]["400.not-understood"];
            401: components["responses"]["401.key-refused.not-authenticated"];
            403: components["responses"]["403.not-allowed.scope-missing"];
            404: components["responses"]["404.not-found"];
            412: components["responses"]["412.changed-since"];
            429: components["responses"]["429.too-often"];
            503: components["responses"]["503.busy"];
            default: components["responses"]["any-other"];
        };
    };
    case_by_external_id_update: {
        parameters: {
            query?: never;
            header?: {
                /** @description The ETag of the case as you saw it; refused if it changed. */
                "If-Match"?: string;
            };
            path: {
                external_id: string;
                programme_id: string;
            };
            cookie?: never;
        };
        requestBody: {
            content: {
                "application/json": components["schemas"]["KnownCaseGivenRequest"];
            };
        };
        responses: {
            200: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["CaseShown"];
                };
            };
            201: {
                headers: {
                    /** @description Where what was made lies. */
                    Location?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["CaseShown"];
                };
            };
            400: components["responses"]["400.not-understood.parse-error"];
            401: components["responses"]["401.key-refused.not-authenticated"];
            403: components["responses"]["403.not-allowed.scope-missing.token-missing"];
            404: components["responses"]["404.not-found"];
            408: components["responses"]["408.body-too-slow"];
            409: components["responses"]["409.external-id-taken.setting-fixed"];
            412: components["responses"]["412.changed-since"];
            413: components["responses"]["413.body-too-long"];
            415: components["responses"]["415.unsupported-media-type"];
            /**
             * @description - `alias-looks-like-a-name`: The alias may be a name. It is asked about once: whoever says that it is none has it taken.
             *     - `alias-refused`: The alias of a patient holds what an alias must not hold.
             *     - `external-id-refused`: What was sent as an external id is none, or looks like something of a person.
             *     - `factor-not-known`: No such factor of difficulty, or no such level of it.
             *     - `not-usable`: Good data that cannot be used here.
             *     - `notation-missing`: A designation that does not say its notation.
             *     - `out-of-bounds`: A number lies outside the bounds of its quantity.
             *     - `unknown-tooth`: There is no such tooth in that notation.
             */
            422: {
                headers: {
                    /** @description Names the request. Tell it to whoever looks after the server. */
                    "X-Request-Id"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"] & {
                        /** @enum {unknown} */
                        type?: "/api/v1/problems/alias-looks-like-a-name" | "/api/v1/problems/alias-refused" | "/api/v1/problems/external-id-refused" | "/api/v1/problems/factor-not-known" | "/api/v1/problems/not-usable" | "/api/v1/problems/notation-missing" | "/api/v1/problems/out-of-bounds" | "/api/v1/problems/unknown-tooth";
                    };
                };
            };
            429: components["responses"]["429.too-often"];
            503: components["responses"]["503.busy"];
            default: components["responses"]["any-other"];
        };
    };
    programme_changes: {
        parameters: {
            query?: {
                /** @description `next` of the page before; left out or 0: the start; `last`: from now on. */
                after?: string;
                /** @description Changes on a page. */
                limit?: number;
                /** @description Where there is none, the answer waits so many seconds for one. 503 with `Retry-After` where too many wait already. */
                wait_s?: number;
            };
            header?: {
                /** @description The ETag seen last, several of them, or `*`: 304 where nothing has changed (RFC 9110, 13.1.2). */
                "If-None-Match"?: string;
            };
            path: {
                programme_id: string;
            };
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            200: {
                headers: {
                    /** @description Changes with all that is shown; If-None-Match takes it, and If-Match where a change asks for it. */
                    ETag?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["ChangePage"];
                };
            };
            /** @description What is shown is what the ETag of If-None-Match is of. No body. */
            304: {
                headers: {
                    [name: string]: unknown;
                };
                content?: never;
            };
            400: components["responses"]["400.not-understood"];
            401: components["responses"]["401.key-refused.not-authenticated"];
            403: components["responses"]["403.scope-missing"];
            404: components["responses"]["404.not-found"];
            409: components["responses"]["409.not-of-this-feed"];
            412: components["responses"]["412.changed-since"];
            429: components["responses"]["429.too-often"];
            503: components["responses"]["503.busy"];
            default: components["responses"]["any-other"];
        };
    };
    clients_list: {
        parameters: {
            query?: {
                /** @description Of the page, as `next` and `previous` have it. */
                cursor?: string;
                /** @description So many on a page; left out, all are on one. */
                limit?: number;
            };
            header?: {
                /** @description The ETag seen last, several of them, or `*`: 304 where nothing has changed (RFC 9110, 13.1.2). */
                "If-None-Match"?: string;
            };
            path: {
                programme_id: string;
            };
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            200: {
                headers: {
                    /** @description Changes with all that is shown; If-None-Match takes it, and If-Match where a change asks for it. */
                    ETag?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["ClientList"];
                };
            };
            /** @description What is shown is what the ETag of If-None-Match is of. No body. */
            304: {
                headers: {
                    [name: string]: unknown;
                };
                content?: never;
            };
            400: components["responses"]["400.not-understood"];
            401: components["responses"]["401.key-refused.not-authenticated"];
            403: components["responses"]["403.key-opens-not.not-allowed"];
            404: components["responses"]["404.not-found"];
            412: components["responses"]["412.changed-since"];
            503: components["responses"]["503.busy"];
            default: components["responses"]["any-other"];
        };
    };
    clients_create: {
        parameters: {
            query?: never;
            header?: never;
            path: {
                programme_id: string;
            };
            cookie?: never;
        };
        requestBody: {
            content: {
                "application/json": components["schemas"]["ClientGivenRequest"];
            };
        };
        responses: {
            201: {
                headers: {
                    /** @description Where what was made lies. */
                    Location?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["ClientWithSecret"];
                };
            };
            400: components["responses"]["400.not-understood.parse-error"];
            401: components["responses"]["401.key-refused.not-authenticated"];
            403: components["responses"]["403.key-opens-not.not-allowed.token-missing"];
            404: components["responses"]["404.not-found"];
            408: components["responses"]["408.body-too-slow"];
            409: components["responses"]["409.conflict"];
            413: components["responses"]["413.body-too-long"];
            415: components["responses"]["415.unsupported-media-type"];
            422: components["responses"]["422.not-usable.password-wrong"];
            429: components["responses"]["429.too-many-tries.too-often"];
            503: components["responses"]["503.busy.took-too-long"];
            default: components["responses"]["any-other"];
        };
    };
    client_retrieve: {
        parameters: {
            query?: never;
            header?: {
                /** @description The ETag seen last, several of them, or `*`: 304 where nothing has changed (RFC 9110, 13.1.2). */
                "If-None-Match"?: string;
            };
            path: {
                client_id: string;
                programme_id: string;
            };
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            200: {
                headers: {
                    /** @description Changes with all that is shown; If-None-Match takes it, and If-Match where a change asks for it. */
                    ETag?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["ClientShown"];
                };
            };
            /** @description What is shown is what the ETag of If-None-Match is of. No body. */
            304: {
                headers: {
                    [name: string]: unknown;
                };
                content?: never;
            };
            400: components["responses"]["400.not-understood"];
            401: components["responses"]["401.key-refused.not-authenticated"];
            403: components["responses"]["403.key-opens-not.not-allowed"];
            404: components["responses"]["404.not-found"];
            412: components["responses"]["412.changed-since"];
            503: components["responses"]["503.busy"];
            default: components["responses"]["any-other"];
        };
    };
    client_destroy: {
        parameters: {
            query?: never;
            header?: never;
            path: {
                client_id: string;
                programme_id: string;
            };
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            /** @description No response body */
            204: {
                headers: {
                    [name: string]: unknown;
                };
                content?: never;
            };
            400: components["responses"]["400.not-understood"];
            401: components["responses"]["401.key-refused.not-authenticated"];
            403: components["responses"]["403.key-opens-not.not-allowed.token-missing"];
            404: components["responses"]["404.not-found"];
            503: components["responses"]["503.busy"];
            default: components["responses"]["any-other"];
        };
    };
    programme_export: {
        parameters: {
            query?: never;
            header?: {
                /** @description The ETag seen last, several of them, or `*`: 304 where nothing has changed (RFC 9110, 13.1.2). */
                "If-None-Match"?: string;
            };
            path: {
                programme_id: string;
            };
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            200: {
                headers: {
                    /** @description Changes with all that is shown; If-None-Match takes it, and If-Match where a change asks for it. */
                    ETag?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["ExportShown"];
                };
            };
            /** @description What is shown is what the ETag of If-None-Match is of. No body. */
            304: {
                headers: {
                    [name: string]: unknown;
                };
                content?: never;
            };
            400: components["responses"]["400.not-understood"];
            401: components["responses"]["401.key-refused.not-authenticated"];
            403: components["responses"]["403.scope-missing"];
            404: components["responses"]["404.not-found"];
            412: components["responses"]["412.changed-since"];
            429: components["responses"]["429.too-often"];
            503: components["responses"]["503.busy"];
            default: components["responses"]["any-other"];
        };
    };
    programme_export_csv: {
        parameters: {
            query?: {
                /** @description `id` of the last row you have whole; left out: from the first row on. */
                after?: string;
                /** @description One case alone. */
                case_id?: string;
                /** @description For services: the key that yours knows it by. */
                external_id?: string;
                /** @description Those of students who are in the group now, by its whole name. */
                group?: string;
                /** @description Rows on a page. */
                limit?: number;
                /** @description Cases opened then or later. */
                opened_from?: string;
                /** @description Cases opened earlier than then. */
                opened_until?: string;
                /** @description Where they are worked. */
                setting?: "block" | "extracted" | "clinic";
                /** @description Where the plan stands, as in `status`. */
                state?: "none" | "draft" | "waiting" | "approved" | "returned" | "revoked" | "approval_void";
                /** @description Whose cases. */
                student_id?: string;
                /** @description Whom they were given to. */
                supervisor_id?: string;
                /** @description ISO 3950 designation. */
                tooth?: string;
                /** @description Those of which something was changed, decided or done then or later. What is being written just now has its time already: ask with a minute of overlap. */
                updated_since?: string;
            };
            header?: {
                /** @description The ETag seen last, several of them, or `*`: 304 where nothing has changed (RFC 9110, 13.1.2). */
                "If-None-Match"?: string;
            };
            path: {
                programme_id: string;
                /** @description As in the contents. */
                table: "people" | "kits" | "techniques" | "figures" | "cases" | "canals" | "readings" | "junctions" | "images" | "markings" | "bends-in-space" | "plan-versions" | "canal-plans" | "reviews" | "remarks" | "revocations" | "overrides" | "events";
            };
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            200: {
                headers: {
                    /** @description Changes with all that is shown; If-None-Match takes it, and If-Match where a change asks for it. */
                    ETag?: string;
                    [name: string]: unknown;
                };
                content: {
                    "text/csv": string;
                };
            };
            /** @description What is shown is what the ETag of If-None-Match is of. No body. */
            304: {
                headers: {
                    [name: string]: unknown;
                };
                content?: never;
            };
            400: components["responses"]["400.not-understood"];
            401: components["responses"]["401.key-refused.not-authenticated"];
            403: components["responses"]["403.not-allowed.scope-missing"];
            404: components["responses"]["404.not-found"];
            412: components["responses"]["412.changed-since"];
            429: components["responses"]["429.too-often"];
            503: components["responses"]["503.busy.took-too-long"];
            default: components["responses"]["any-other"];
        };
    };
    programme_export_ndjson: {
        parameters: {
            query?: {
                /** @description `id` of the last row you have whole; left out: from the first row on. */
                after?: string;
                /** @description One case alone. */
                case_id?: string;
                /** @description For services: the key that yours knows it by. */
                external_id?: string;
                /** @description Those of students who are in the group now, by its whole name. */
                group?: string;
                /** @description Rows on a page. */
                limit?: number;
                /** @description Cases opened then or later. */
                opened_from?: string;
                /** @description Cases opened earlier than then. */
                opened_until?: string;
                /** @description Where they are worked. */
                setting?: "block" | "extracted" | "clinic";
                /** @description Where the plan stands, as in `status`. */
                state?: "none" | "draft" | "waiting" | "approved" | "returned" | "revoked" | "approval_void";
                /** @description Whose cases. */
                student_id?: string;
                /** @description Whom they were given to. */
                supervisor_id?: string;
                /** @description ISO 3950 designation. */
                tooth?: string;
                /** @description Those of which something was changed, decided or done then or later. What is being written just now has its time already: ask with a minute of overlap. */
                updated_since?: string;
            };
            header?: {
                /** @description The ETag seen last, several of them, or `*`: 304 where nothing has changed (RFC 9110, 13.1.2). */
                "If-None-Match"?: string;
            };
            path: {
                programme_id: string;
                /** @description As in the contents. */
                table: "people" | "kits" | "techniques" | "figures" | "cases" | "canals" | "readings" | "junctions" | "images" | "markings" | "bends-in-space" | "plan-versions" | "canal-plans" | "reviews" | "remarks" | "revocations" | "overrides" | "events";
            };
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            200: {
                headers: {
                    /** @description Changes with all that is shown; If-None-Match takes it, and If-Match where a change asks for it. */
                    ETag?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/x-ndjson": string;
                };
            };
            /** @description What is shown is what the ETag of If-None-Match is of. No body. */
            304: {
                headers: {
                    [name: string]: unknown;
                };
                content?: never;
            };
            400: components["responses"]["400.not-understood"];
            401: components["responses"]["401.key-refused.not-authenticated"];
            403: components["responses"]["403.not-allowed.scope-missing"];
            404: components["responses"]["404.not-found"];
            412: components["responses"]["412.changed-since"];
            429: components["responses"]["429.too-often"];
            503: components["responses"]["503.busy.took-too-long"];
            default: components["responses"]["any-other"];
        };
    };
    programme_figures_list: {
        parameters: {
            query?: {
                /** @description Of the page, as `next` and `previous` have it. */
                cursor?: string;
                /** @description So many on a page; left out, all are on one. */
                limit?: number;
            };
            header?: {
                /** @description The ETag seen last, several of them, or `*`: 304 where nothing has changed (RFC 9110, 13.1.2). */
                "If-None-Match"?: string;
            };
            path: {
                programme_id: string;
            };
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            200: {
                headers: {
                    /** @description Changes with all that is shown; If-None-Match takes it, and If-Match where a change asks for it. */
                    ETag?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["FiguresShown"];
                };
            };
            /** @description What is shown is what the ETag of If-None-Match is of. No body. */
            304: {
                headers: {
                    [name: string]: unknown;
                };
                content?: never;
            };
            400: components["responses"]["400.not-understood"];
            401: components["responses"]["401.key-refused.not-authenticated"];
            403: components["responses"]["403.scope-missing"];
            404: components["responses"]["404.not-found"];
            412: components["responses"]["412.changed-since"];
            429: components["responses"]["429.too-often"];
            503: components["responses"]["503.busy"];
            default: components["responses"]["any-other"];
        };
    };
    programme_figure_update: {
        parameters: {
            query?: never;
            header?: never;
            path: {
                key: string;
                programme_id: string;
            };
            cookie?: never;
        };
        requestBody: {
            content: {
                "application/json": components["schemas"]["FigureGivenRequest"];
            };
        };
        responses: {
            200: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["FigureShown"];
                };
            };
            400: components["responses"]["400.not-understood.parse-error"];
            401: components["responses"]["401.key-refused.not-authenticated"];
            403: components["responses"]["403.key-opens-not.not-allowed.token-missing"];
            404: components["responses"]["404.not-found"];
            408: components["responses"]["408.body-too-slow"];
            413: components["responses"]["413.body-too-long"];
            415: components["responses"]["415.unsupported-media-type"];
            422: components["responses"]["422.choice-not-possible.out-of-bounds"];
            503: components["responses"]["503.busy"];
            default: components["responses"]["any-other"];
        };
    };
    programme_figure_destroy: {
        parameters: {
            query?: never;
            header?: never;
            path: {
                key: string;
                programme_id: string;
            };
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            /** @description No response body */
            204: {
                headers: {
                    [name: string]: unknown;
                };
                content?: never;
            };
            400: components["responses"]["400.not-understood"];
            401: components["responses"]["401.key-refused.not-authenticated"];
            403: components["responses"]["403.key-opens-not.not-allowed.token-missing"];
            404: components["responses"]["404.not-found"];
            503: components["responses"]["503.busy"];
            default: components["responses"]["any-other"];
        };
    };
    programme_former_people_list: {
        parameters: {
            query?: {
                /** @description As in `next` or `previous`. */
                cursor?: string;
                /** @description So many on a page. */
                limit?: number;
            };
            header?: {
                /** @description The ETag seen last, several of them, or `*`: 304 where nothing has changed (RFC 9110, 13.1.2). */
                "If-None-Match"?: string;
            };
            path: {
                programme_id: string;
            };
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            200: {
                headers: {
                    /** @description Changes with all that is shown; If-None-Match takes it, and If-Match where a change asks for it. */
                    ETag?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["FormerPeoplePage"];
                };
            };
            /** @description What is shown is what the ETag of If-None-Match is of. No body. */
            304: {
                headers: {
                    [name: string]: unknown;
                };
                content?: never;
            };
            400: components["responses"]["400.not-understood"];
            401: components["responses"]["401.key-refused.not-authenticated"];
            403: components["responses"]["403.key-opens-not.not-allowed"];
            404: components["responses"]["404.not-found"];
            412: components["responses"]["412.changed-since"];
            503: components["responses"]["503.busy"];
            default: components["responses"]["any-other"];
        };
    };
    invitations_list: {
        parameters: {
            query?: {
                /** @description As in `next` or `previous`. */
                cursor?: string;
                /** @description So many on a page. */
                limit?: number;
                /** @description How they stand now. */
                state?: "open" | "used" | "withdrawn" | "ended";
            };
            header?: {
                /** @description The ETag seen last, several of them, or `*`: 304 where nothing has changed (RFC 9110, 13.1.2). */
                "If-None-Match"?: string;
            };
            path: {
                programme_id: string;
            };
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            200: {
                headers: {
                    /** @description Changes with all that is shown; If-None-Match takes it, and If-Match where a change asks for it. */
                    ETag?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["InvitationPage"];
                };
            };
            /** @description What is shown is what the ETag of If-None-Match is of. No body. */
            304: {
                headers: {
                    [name: string]: unknown;
                };
                content?: never;
            };
            400: components["responses"]["400.not-understood"];
            401: components["responses"]["401.key-refused.not-authenticated"];
            403: components["responses"]["403.key-opens-not.not-allowed"];
            404: components["responses"]["404.not-found"];
            412: components["responses"]["412.changed-since"];
            503: components["responses"]["503.busy"];
            default: components["responses"]["any-other"];
        };
    };
    invitations_create: {
        parameters: {
            query?: never;
            header?: never;
            path: {
                programme_id: string;
            };
            cookie?: never;
        };
        requestBody: {
            content: {
                "application/json": components["schemas"]["InvitationsGivenRequest"];
            };
        };
        responses: {
            200: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["InvitationsWithLinks"];
                };
            };
            400: components["responses"]["400.not-understood.parse-error"];
            401: components["responses"]["401.key-refused.not-authenticated"];
            403: components["responses"]["403.key-opens-not.not-allowed.token-missing"];
            404: components["responses"]["404.not-found"];
            408: components["responses"]["408.body-too-slow"];
            413: components["responses"]["413.body-too-long"];
            415: components["responses"]["415.unsupported-media-type"];
            422: components["responses"]["422.not-usable"];
            503: components["responses"]["503.busy"];
            default: components["responses"]["any-other"];
        };
    };
    invitation_retrieve: {
        parameters: {
            query?: never;
            header?: {
                /** @description The ETag seen last, several of them, or `*`: 304 where nothing has changed (RFC 9110, 13.1.2). */
                "If-None-Match"?: string;
            };
            path: {
                invitation_id: string;
                programme_id: string;
            };
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            200: {
                headers: {
                    /** @description Changes with all that is shown; If-None-Match takes it, and If-Match where a change asks for it. */
                    ETag?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["InvitationShown"];
                };
            };
            /** @description What is shown is what the ETag of If-None-Match is of. No body. */
            304: {
                headers: {
                    [name: string]: unknown;
                };
                content?: never;
            };
            400: components["responses"]["400.not-understood"];
            401: components["responses"]["401.key-refused.not-authenticated"];
            403: components["responses"]["403.key-opens-not.not-allowed"];
            404: components["responses"]["404.not-found"];
            412: components["responses"]["412.changed-since"];
            503: components["responses"]["503.busy"];
            default: components["responses"]["any-other"];
        };
    };
    invitation_destroy: {
        parameters: {
            query?: never;
            header?: never;
            path: {
                invitation_id: string;
                programme_id: string;
            };
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            /** @description No response body */
            204: {
                headers: {
                    [name: string]: unknown;
                };
                content?: never;
            };
            400: components["responses"]["400.not-understood"];
            401: components["responses"]["401.key-refused.not-authenticated"];
            403: components["responses"]["403.key-opens-not.not-allowed.token-missing"];
            404: components["responses"]["404.not-found"];
            409: components["responses"]["409.conflict"];
            503: components["responses"]["503.busy"];
            default: components["responses"]["any-other"];
        };
    };
    invitation_renew: {
        parameters: {
            query?: never;
            header?: never;
            path: {
                invitation_id: string;
                programme_id: string;
            };
            cookie?: never;
        };
        requestBody?: {
            content: {
                "application/json": components["schemas"]["RenewalGivenRequest"];
            };
        };
        responses: {
            200: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["InvitationWithLink"];
                };
            };
            400: components["responses"]["400.not-understood.parse-error"];
            401: components["responses"]["401.key-refused.not-authenticated"];
            403: components["responses"]["403.key-opens-not.not-allowed.token-missing"];
            404: components["responses"]["404.not-found"];
            408: components["responses"]["408.body-too-slow"];
            409: components["responses"]["409.conflict"];
            413: components["responses"]["413.body-too-long"];
            415: components["responses"]["415.unsupported-media-type"];
            422: components["responses"]["422.not-usable"];
            503: components["responses"]["503.busy"];
            default: components["responses"]["any-other"];
        };
    };
    kits_list: {
        parameters: {
            query?: {
                /** @description Of the page, as `next` and `previous` have it. */
                cursor?: string;
                /** @description For services: the key that yours knows it by. */
                external_id?: string;
                /** @description Only these fields, with a comma between two; of a list, in each of its rows. */
                fields?: ("id" | "external_id" | "kit" | "yours")[];
                /** @description So many on a page; left out, all are on one. */
                limit?: number;
            };
            header?: {
                /** @description The ETag seen last, several of them, or `*`: 304 where nothing has changed (RFC 9110, 13.1.2). */
                "If-None-Match"?: string;
            };
            path: {
                programme_id: string;
            };
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            200: {
                headers: {
                    /** @description Changes with all that is shown; If-None-Match takes it, and If-Match where a change asks for it. */
                    ETag?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["KitList"];
                };
            };
            /** @description What is shown is what the ETag of If-None-Match is of. No body. */
            304: {
                headers: {
                    [name: string]: unknown;
                };
                content?: never;
            };
            400: components["responses"]["400.not-understood"];
            401: components["responses"]["401.key-refused.not-authenticated"];
            403: components["responses"]["403.not-allowed.scope-missing"];
            404: components["responses"]["404.not-found"];
            412: components["responses"]["412.changed-since"];
            429: components["responses"]["429.too-often"];
            503: components["responses"]["503.busy"];
            default: components["responses"]["any-other"];
        };
    };
    kits_create: {
        parameters: {
            query?: never;
            header?: {
                /** @description In quotation marks, up to 100 visible characters, such as a new UUID: sent again with the same key within a day, the same is not done again but answered as it was. 409, `still-under-way`, while the first goes on; 422, `idempotency-key-used-differently`, for anything else with the key. What was refused may be sent again. */
                "Idempotency-Key"?: string;
            };
            path: {
                programme_id: string;
            };
            cookie?: never;
        };
        requestBody: {
            content: {
                "application/json": components["schemas"]["KitGivenRequest"];
            };
        };
        responses: {
            200: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["KitShown"];
                };
            };
            201: {
                headers: {
                    /** @description Where what was made lies. */
                    Location?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["KitShown"];
                };
            };
            400: components["responses"]["400.not-understood.parse-error"];
            401: components["responses"]["401.key-refused.not-authenticated"];
            403: components["responses"]["403.key-opens-not.not-allowed.token-missing"];
            404: components["responses"]["404.not-found"];
            408: components["responses"]["408.body-too-slow"];
            409: components["responses"]["409.id-used-differently.still-under-way.taken-already"];
            413: components["responses"]["413.body-too-long"];
            415: components["responses"]["415.unsupported-media-type"];
            /**
             * @description - `choice-not-possible`: A choice for a canal that its findings do not allow.
             *     - `idempotency-key-used-differently`: The `Idempotency-Key` came before, within a day, with another body, to another address or on another condition.
             *     - `instrument-not-described`: An instrument of which something is not said that planning needs.
             *     - `not-usable`: Good data that cannot be used here.
             *     - `out-of-bounds`: A number lies outside the bounds of its quantity.
             */
            422: {
                headers: {
                    /** @description Names the request. Tell it to whoever looks after the server. */
                    "X-Request-Id"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"] & {
                        /** @enum {unknown} */
                        type?: "/api/v1/problems/choice-not-possible" | "/api/v1/problems/idempotency-key-used-differently" | "/api/v1/problems/instrument-not-described" | "/api/v1/problems/not-usable" | "/api/v1/problems/out-of-bounds";
                    };
                };
            };
            503: components["responses"]["503.busy"];
            default: components["responses"]["any-other"];
        };
    };
    kit_retrieve: {
        parameters: {
            query?: {
                /** @description Only these fields, with a comma between two; of a list, in each of its rows. */
                fields?: ("id" | "external_id" | "kit" | "yours")[];
            };
            header?: {
                /** @description The ETag seen last, several of them, or `*`: 304 where nothing has changed (RFC 9110, 13.1.2). */
                "If-None-Match"?: string;
            };
            path: {
                kit_id: string;
                programme_id: string;
            };
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            200: {
                headers: {
                    /** @description Changes with all that is shown; If-None-Match takes it, and If-Match where a change asks for it. */
                    ETag?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["KitShown"];
                };
            };
            /** @description What is shown is what the ETag of If-None-Match is of. No body. */
            304: {
                headers: {
                    [name: string]: unknown;
                };
                content?: never;
            };
            400: components["responses"]["400.not-understood"];
            401: components["responses"]["401.key-refused.not-authenticated"];
            403: components["responses"]["403.scope-missing"];
            404: components["responses"]["404.not-found"];
            412: components["responses"]["412.changed-since"];
            429: components["responses"]["429.too-often"];
            503: components["responses"]["503.busy"];
            default: components["responses"]["any-other"];
        };
    };
    kit_external_id_update: {
        parameters: {
            query?: never;
            header?: never;
            path: {
                kit_id: string;
                programme_id: string;
            };
            cookie?: never;
        };
        requestBody: {
            content: {
                "application/json": components["schemas"]["ExternalIdGivenRequest"];
            };
        };
        responses: {
            200: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["ExternalIdShown"];
                };
            };
            201: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["ExternalIdShown"];
                };
            };
            400: components["responses"]["400.not-understood.parse-error"];
            401: components["responses"]["401.key-refused.not-authenticated"];
            403: components["responses"]["403.not-allowed.scope-missing.token-missing"];
            404: components["responses"]["404.not-found"];
            408: components["responses"]["408.body-too-slow"];
            409: components["responses"]["409.external-id-taken"];
            413: components["responses"]["413.body-too-long"];
            415: components["responses"]["415.unsupported-media-type"];
            422: components["responses"]["422.external-id-refused"];
            429: components["responses"]["429.too-often"];
            503: components["responses"]["503.busy"];
            default: components["responses"]["any-other"];
        };
    };
    kit_external_id_destroy: {
        parameters: {
            query?: never;
            header?: never;
            path: {
                kit_id: string;
                programme_id: string;
            };
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            /** @description No response body */
            204: {
                headers: {
                    [name: string]: unknown;
                };
                content?: never;
            };
            400: components["responses"]["400.not-understood"];
            401: components["responses"]["401.key-refused.not-authenticated"];
            403: components["responses"]["403.not-allowed.scope-missing.token-missing"];
            404: components["responses"]["404.not-found"];
            429: components["responses"]["429.too-often"];
            503: components["responses"]["503.busy"];
            default: components["responses"]["any-other"];
        };
    };
    lti_platforms_list: {
        parameters: {
            query?: {
                /** @description Of the page, as `next` and `previous` have it. */
                cursor?: string;
                /** @description So many on a page; left out, all are on one. */
                limit?: number;
            };
            header?: {
                /** @description The ETag seen last, several of them, or `*`: 304 where nothing has changed (RFC 9110, 13.1.2). */
                "If-None-Match"?: string;
            };
            path: {
                programme_id: string;
            };
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            200: {
                headers: {
                    /** @description Changes with all that is shown; If-None-Match takes it, and If-Match where a change asks for it. */
                    ETag?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["PlatformList"];
                };
            };
            /** @description What is shown is what the ETag of If-None-Match is of. No body. */
            304: {
                headers: {
                    [name: string]: unknown;
                };
                content?: never;
            };
            400: components["responses"]["400.not-understood"];
            401: components["responses"]["401.key-refused.not-authenticated"];
            403: components["responses"]["403.key-opens-not.not-allowed"];
            404: components["responses"]["404.not-found"];
            412: components["responses"]["412.changed-since"];
            503: components["responses"]["503.busy"];
            default: components["responses"]["any-other"];
        };
    };
    lti_platforms_create: {
        parameters: {
            query?: never;
            header?: never;
            path: {
                programme_id: string;
            };
            cookie?: never;
        };
        requestBody: {
            content: {
                "application/json": components["schemas"]["PlatformGivenRequest"];
            };
        };
        responses: {
            201: {
                headers: {
                    /** @description Where what was made lies. */
                    Location?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["PlatformShown"];
                };
            };
            400: components["responses"]["400.not-understood.parse-error"];
            401: components["responses"]["401.key-refused.not-authenticated"];
            403: components["responses"]["403.key-opens-not.not-allowed.token-missing"];
            404: components["responses"]["404.not-found"];
            408: components["responses"]["408.body-too-slow"];
            409: components["responses"]["409.taken-already"];
            413: components["responses"]["413.body-too-long"];
            415: components["responses"]["415.unsupported-media-type"];
            422: components["responses"]["422.not-usable.password-wrong"];
            429: components["responses"]["429.too-many-tries.too-often"];
            503: components["responses"]["503.busy.took-too-long"];
            default: components["responses"]["any-other"];
        };
    };
    lti_platform_retrieve: {
        parameters: {
            query?: never;
            header?: {
                /** @description The ETag seen last, several of them, or `*`: 304 where nothing has changed (RFC 9110, 13.1.2). */
                "If-None-Match"?: string;
            };
            path: {
                platform_id: string;
                programme_id: string;
            };
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            200: {
                headers: {
                    /** @description Changes with all that is shown; If-None-Match takes it, and If-Match where a change asks for it. */
                    ETag?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["PlatformShown"];
                };
            };
            /** @description What is shown is what the ETag of If-None-Match is of. No body. */
            304: {
                headers: {
                    [name: string]: unknown;
                };
                content?: never;
            };
            400: components["responses"]["400.not-understood"];
            401: components["responses"]["401.key-refused.not-authenticated"];
            403: components["responses"]["403.key-opens-not.not-allowed"];
            404: components["responses"]["404.not-found"];
            412: components["responses"]["412.changed-since"];
            503: components["responses"]["503.busy"];
            default: components["responses"]["any-other"];
        };
    };
    lti_platform_update: {
        parameters: {
            query?: never;
            header?: never;
            path: {
                platform_id: string;
                programme_id: string;
            };
            cookie?: never;
        };
        requestBody: {
            content: {
                "application/json": components["schemas"]["PlatformGivenRequest"];
            };
        };
        responses: {
            200: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["PlatformShown"];
                };
            };
            400: components["responses"]["400.not-understood.parse-error"];
            401: components["responses"]["401.key-refused.not-authenticated"];
            403: components["responses"]["403.key-opens-not.not-allowed.token-missing"];
            404: components["responses"]["404.not-found"];
            408: components["responses"]["408.body-too-slow"];
            409: components["responses"]["409.taken-already"];
            413: components["responses"]["413.body-too-long"];
            415: components["responses"]["415.unsupported-media-type"];
            422: components["responses"]["422.not-usable.password-wrong"];
            429: components["responses"]["429.too-many-tries.too-often"];
            503: components["responses"]["503.busy.took-too-long"];
            default: components["responses"]["any-other"];
        };
    };
    programme_people_list: {
        parameters: {
            query?: {
                /** @description As in `next` or `previous`. */
                cursor?: string;
                /** @description For services: the key that yours knows it by. */
                external_id?: string;
                /** @description Only these fields, with a comma between two; of a list, in each of its rows. */
                fields?: ("person" | "role" | "group" | "joined_at" | "treats_patients_until" | "external_id")[];
                /** @description The group they are in, by its whole name. */
                group?: string;
                /** @description So many on a page. */
                limit?: number;
                /** @description What they are in the programme. */
                role?: "student" | "supervisor" | "coordinator";
            };
            header?: {
                /** @description The ETag seen last, several of them, or `*`: 304 where nothing has changed (RFC 9110, 13.1.2). */
                "If-None-Match"?: string;
            };
            path: {
                programme_id: string;
            };
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            200: {
                headers: {
                    /** @description Changes with all that is shown; If-None-Match takes it, and If-Match where a change asks for it. */
                    ETag?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["PeoplePage"];
                };
            };
            /** @description What is shown is what the ETag of If-None-Match is of. No body. */
            304: {
                headers: {
                    [name: string]: unknown;
                };
                content?: never;
            };
            400: components["responses"]["400.not-understood"];
            401: components["responses"]["401.key-refused.not-authenticated"];
            403: components["responses"]["403.not-allowed.scope-missing"];
            404: components["responses"]["404.not-found"];
            412: components["responses"]["412.changed-since"];
            429: components["responses"]["429.too-often"];
            503: components["responses"]["503.busy"];
            default: components["responses"]["any-other"];
        };
    };
    people_list_check: {
        parameters: {
            query?: never;
            header?: never;
            path: {
                programme_id: string;
            };
            cookie?: never;
        };
        requestBody: {
            content: {
                "application/json": components["schemas"]["PeopleListGivenRequest"];
            };
        };
        responses: {
            200: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["PeopleListShown"];
                };
            };
            400: components["responses"]["400.not-understood.parse-error"];
            401: components["responses"]["401.key-refused.not-authenticated"];
            403: components["responses"]["403.key-opens-not.not-allowed.token-missing"];
            404: components["responses"]["404.not-found"];
            408: components["responses"]["408.body-too-slow"];
            413: components["responses"]["413.body-too-long"];
            415: components["responses"]["415.unsupported-media-type"];
            422: components["responses"]["422.not-usable"];
            503: components["responses"]["503.busy"];
            default: components["responses"]["any-other"];
        };
    };
    programme_person_retrieve: {
        parameters: {
            query?: {
                /** @description Only these fields, with a comma between two; of a list, in each of its rows. */
                fields?: ("person" | "role" | "group" | "joined_at" | "treats_patients_until" | "external_id")[];
            };
            header?: {
                /** @description The ETag seen last, several of them, or `*`: 304 where nothing has changed (RFC 9110, 13.1.2). */
                "If-None-Match"?: string;
            };
            path: {
                person_id: string;
                programme_id: string;
            };
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            200: {
                headers: {
                    /** @description Changes with all that is shown; If-None-Match takes it, and If-Match where a change asks for it. */
                    ETag?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["MemberShown"];
                };
            };
            /** @description What is shown is what the ETag of If-None-Match is of. No body. */
            304: {
                headers: {
                    [name: string]: unknown;
                };
                content?: never;
            };
            400: components["responses"]["400.not-understood"];
            401: components["responses"]["401.key-refused.not-authenticated"];
            403: components["responses"]["403.not-allowed.scope-missing"];
            404: components["responses"]["404.not-found"];
            412: components["responses"]["412.changed-since"];
            429: components["responses"]["429.too-often"];
            503: components["responses"]["503.busy"];
            default: components["responses"]["any-other"];
        };
    };
    programme_person_destroy: {
        parameters: {
            query?: never;
            header?: never;
            path: {
                person_id: string;
                programme_id: string;
            };
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            /** @description No response body */
            204: {
                headers: {
                    [name: string]: unknown;
                };
                content?: never;
            };
            400: components["responses"]["400.not-understood"];
            401: components["responses"]["401.key-refused.not-authenticated"];
            403: components["responses"]["403.key-opens-not.not-allowed.token-missing"];
            404: components["responses"]["404.not-found"];
            409: components["responses"]["409.conflict"];
            503: components["responses"]["503.busy"];
            default: components["responses"]["any-other"];
        };
    };
    programme_person_partial_update: {
        parameters: {
            query?: never;
            header?: never;
            path: {
                person_id: string;
                programme_id: string;
            };
            cookie?: never;
        };
        requestBody?: {
            content: {
                "application/json": components["schemas"]["PatchedMemberChangesRequest"];
            };
        };
        responses: {
            200: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["MemberShown"];
                };
            };
            400: components["responses"]["400.not-understood.parse-error"];
            401: components["responses"]["401.key-refused.not-authenticated"];
            403: components["responses"]["403.key-opens-not.not-allowed.token-missing"];
            404: components["responses"]["404.not-found"];
            408: components["responses"]["408.body-too-slow"];
            409: components["responses"]["409.conflict"];
            413: components["responses"]["413.body-too-long"];
            415: components["responses"]["415.unsupported-media-type"];
            422: components["responses"]["422.not-usable"];
            503: components["responses"]["503.busy"];
            default: components["responses"]["any-other"];
        };
    };
    person_external_id_update: {
        parameters: {
            query?: never;
            header?: never;
            path: {
                person_id: string;
                programme_id: string;
            };
            cookie?: never;
        };
        requestBody: {
            content: {
                "application/json": components["schemas"]["ExternalIdGivenRequest"];
            };
        };
        responses: {
            200: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["ExternalIdShown"];
                };
            };
            201: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["ExternalIdShown"];
                };
            };
            400: components["responses"]["400.not-understood.parse-error"];
            401: components["responses"]["401.key-refused.not-authenticated"];
            403: components["responses"]["403.not-allowed.scope-missing.token-missing"];
            404: components["responses"]["404.not-found"];
            408: components["responses"]["408.body-too-slow"];
            409: components["responses"]["409.external-id-taken"];
            413: components["responses"]["413.body-too-long"];
            415: components["responses"]["415.unsupported-media-type"];
            422: components["responses"]["422.external-id-refused"];
            429: components["responses"]["429.too-often"];
            503: components["responses"]["503.busy"];
            default: components["responses"]["any-other"];
        };
    };
    person_external_id_destroy: {
        parameters: {
            query?: never;
            header?: never;
            path: {
                person_id: string;
                programme_id: string;
            };
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            /** @description No response body */
            204: {
                headers: {
                    [name: string]: unknown;
                };
                content?: never;
            };
            400: components["responses"]["400.not-understood"];
            401: components["responses"]["401.key-refused.not-authenticated"];
            403: components["responses"]["403.not-allowed.scope-missing.token-missing"];
            404: components["responses"]["404.not-found"];
            429: components["responses"]["429.too-often"];
            503: components["responses"]["503.busy"];
            default: components["responses"]["any-other"];
        };
    };
    practice_retrieve: {
        parameters: {
            query?: never;
            header?: {
                /** @description The ETag seen last, several of them, or `*`: 304 where nothing has changed (RFC 9110, 13.1.2). */
                "If-None-Match"?: string;
            };
            path: {
                programme_id: string;
            };
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            200: {
                headers: {
                    /** @description Changes with all that is shown; If-None-Match takes it, and If-Match where a change asks for it. */
                    ETag?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["PracticeShown"];
                };
            };
            /** @description What is shown is what the ETag of If-None-Match is of. No body. */
            304: {
                headers: {
                    [name: string]: unknown;
                };
                content?: never;
            };
            400: components["responses"]["400.not-understood"];
            401: components["responses"]["401.key-refused.not-authenticated"];
            403: components["responses"]["403.key-opens-not.not-allowed"];
            404: components["responses"]["404.not-found"];
            412: components["responses"]["412.changed-since"];
            503: components["responses"]["503.busy"];
            default: components["responses"]["any-other"];
        };
    };
    practice_exercises_list: {
        parameters: {
            query?: {
                /** @description As in `next` or `previous`. */
                cursor?: string;
                /** @description Only these fields, with a comma between two; of a list, in each of its rows. */
                fields?: ("id" | "student" | "task_id" | "level" | "created_at" | "ended_at" | "score")[];
                /** @description Of a level. */
                level?: "straight-block" | "incisor" | "distal-canal" | "curved-canal" | "joining-molar";
                /** @description So many on a page. */
                limit?: number;
                /** @description Whose exercises. */
                student_id?: string;
                /** @description Of one task alone. */
                task_id?: string;
            };
            header?: {
                /** @description The ETag seen last, several of them, or `*`: 304 where nothing has changed (RFC 9110, 13.1.2). */
                "If-None-Match"?: string;
            };
            path: {
                programme_id: string;
            };
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            200: {
                headers: {
                    /** @description Changes with all that is shown; If-None-Match takes it, and If-Match where a change asks for it. */
                    ETag?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["PracticeExercisePage"];
                };
            };
            /** @description What is shown is what the ETag of If-None-Match is of. No body. */
            304: {
                headers: {
                    [name: string]: unknown;
                };
                content?: never;
            };
            400: components["responses"]["400.not-understood"];
            401: components["responses"]["401.key-refused.not-authenticated"];
            403: components["responses"]["403.key-opens-not.not-allowed"];
            404: components["responses"]["404.not-found"];
            412: components["responses"]["412.changed-since"];
            503: components["responses"]["503.busy"];
            default: components["responses"]["any-other"];
        };
    };
    practice_exercises_create: {
        parameters: {
            query?: never;
            header?: {
                /** @description In quotation marks, up to 100 visible characters, such as a new UUID: sent again with the same key within a day, the same is not done again but answered as it was. 409, `still-under-way`, while the first goes on; 422, `idempotency-key-used-differently`, for anything else with the key. What was refused may be sent again. */
                "Idempotency-Key"?: string;
            };
            path: {
                programme_id: string;
            };
            cookie?: never;
        };
        requestBody?: {
            content: {
                "application/json": components["schemas"]["ExerciseGivenRequest"];
            };
        };
        responses: {
            200: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["ExerciseShown"];
                };
            };
            201: {
                headers: {
                    /** @description Where what was made lies. */
                    Location?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["ExerciseShown"];
                };
            };
            400: components["responses"]["400.not-understood.parse-error"];
            401: components["responses"]["401.key-refused.not-authenticated"];
            403: components["responses"]["403.key-opens-not.not-allowed.token-missing"];
            404: components["responses"]["404.not-found"];
            408: components["responses"]["408.body-too-slow"];
            409: components["responses"]["409.conflict.id-used-differently.still-under-way"];
            413: components["responses"]["413.body-too-long"];
            415: components["responses"]["415.unsupported-media-type"];
            422: components["responses"]["422.idempotency-key-used-differently.unknown-level"];
            429: components["responses"]["429.too-often"];
            503: components["responses"]["503.busy.took-too-long"];
            default: components["responses"]["any-other"];
        };
    };
    practice_tasks_list: {
        parameters: {
            query?: {
                /** @description As in `next` or `previous`. */
                cursor?: string;
                /** @description Only these fields, with a comma between two; of a list, in each of its rows. */
                fields?: ("id" | "level" | "group" | "set_by" | "created_at" | "withdrawn_at" | "exercise_id" | "begun" | "ended")[];
                /** @description So many on a page. */
                limit?: number;
            };
            header?: {
                /** @description The ETag seen last, several of them, or `*`: 304 where nothing has changed (RFC 9110, 13.1.2). */
                "If-None-Match"?: string;
            };
            path: {
                programme_id: string;
            };
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            200: {
                headers: {
                    /** @description Changes with all that is shown; If-None-Match takes it, and If-Match where a change asks for it. */
                    ETag?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["PracticeTaskPage"];
                };
            };
            /** @description What is shown is what the ETag of If-None-Match is of. No body. */
            304: {
                headers: {
                    [name: string]: unknown;
                };
                content?: never;
            };
            400: components["responses"]["400.not-understood"];
            401: components["responses"]["401.key-refused.not-authenticated"];
            403: components["responses"]["403.key-opens-not.not-allowed"];
            404: components["responses"]["404.not-found"];
            412: components["responses"]["412.changed-since"];
            503: components["responses"]["503.busy"];
            default: components["responses"]["any-other"];
        };
    };
    practice_tasks_create: {
        parameters: {
            query?: never;
            header?: {
                /** @description In quotation marks, up to 100 visible characters, such as a new UUID: sent again with the same key within a day, the same is not done again but answered as it was. 409, `still-under-way`, while the first goes on; 422, `idempotency-key-used-differently`, for anything else with the key. What was refused may be sent again. */
                "Idempotency-Key"?: string;
            };
            path: {
                programme_id: string;
            };
            cookie?: never;
        };
        requestBody: {
            content: {
                "application/json": components["schemas"]["TaskGivenRequest"];
            };
        };
        responses: {
            200: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["TaskShown"];
                };
            };
            201: {
                headers: {
                    /** @description Where what was made lies. */
                    Location?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["TaskShown"];
                };
            };
            400: components["responses"]["400.not-understood.parse-error"];
            401: components["responses"]["401.key-refused.not-authenticated"];
            403: components["responses"]["403.key-opens-not.not-allowed.token-missing"];
            404: components["responses"]["404.not-found"];
            408: components["responses"]["408.body-too-slow"];
            409: components["responses"]["409.id-used-differently.still-under-way"];
            413: components["responses"]["413.body-too-long"];
            415: components["responses"]["415.unsupported-media-type"];
            422: components["responses"]["422.idempotency-key-used-differently.not-usable.unknown-level"];
            503: components["responses"]["503.busy"];
            default: components["responses"]["any-other"];
        };
    };
    practice_task_retrieve: {
        parameters: {
            query?: {
                /** @description Only these fields, with a comma between two; of a list, in each of its rows. */
                fields?: ("id" | "level" | "group" | "set_by" | "created_at" | "withdrawn_at" | "exercise_id" | "begun" | "ended")[];
            };
            header?: {
                /** @description The ETag seen last, several of them, or `*`: 304 where nothing has changed (RFC 9110, 13.1.2). */
                "If-None-Match"?: string;
            };
            path: {
                programme_id: string;
                task_id: string;
            };
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            200: {
                headers: {
                    /** @description Changes with all that is shown; If-None-Match takes it, and If-Match where a change asks for it. */
                    ETag?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["TaskShown"];
                };
            };
            /** @description What is shown is what the ETag of If-None-Match is of. No body. */
            304: {
                headers: {
                    [name: string]: unknown;
                };
                content?: never;
            };
            400: components["responses"]["400.not-understood"];
            401: components["responses"]["401.key-refused.not-authenticated"];
            403: components["responses"]["403.key-opens-not.not-allowed"];
            404: components["responses"]["404.not-found"];
            412: components["responses"]["412.changed-since"];
            503: components["responses"]["503.busy"];
            default: components["responses"]["any-other"];
        };
    };
    practice_task_withdraw: {
        parameters: {
            query?: never;
            header?: {
                /** @description In quotation marks, up to 100 visible characters, such as a new UUID: sent again with the same key within a day, the same is not done again but answered as it was. 409, `still-under-way`, while the first goes on; 422, `idempotency-key-used-differently`, for anything else with the key. What was refused may be sent again. */
                "Idempotency-Key"?: string;
            };
            path: {
                programme_id: string;
                task_id: string;
            };
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            200: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["TaskShown"];
                };
            };
            400: components["responses"]["400.not-understood"];
            401: components["responses"]["401.key-refused.not-authenticated"];
            403: components["responses"]["403.key-opens-not.not-allowed.token-missing"];
            404: components["responses"]["404.not-found"];
            409: components["responses"]["409.still-under-way"];
            422: components["responses"]["422.idempotency-key-used-differently"];
            503: components["responses"]["503.busy"];
            default: components["responses"]["any-other"];
        };
    };
    running_work: {
        parameters: {
            query?: {
                /** @description As in `next` or `previous`. */
                cursor?: string;
                /** @description So many on a page. */
                limit?: number;
            };
            header?: {
                /** @description The ETag seen last, several of them, or `*`: 304 where nothing has changed (RFC 9110, 13.1.2). */
                "If-None-Match"?: string;
            };
            path: {
                programme_id: string;
            };
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            200: {
                headers: {
                    /** @description Changes with all that is shown; If-None-Match takes it, and If-Match where a change asks for it. */
                    ETag?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["RunningList"];
                };
            };
            /** @description What is shown is what the ETag of If-None-Match is of. No body. */
            304: {
                headers: {
                    [name: string]: unknown;
                };
                content?: never;
            };
            400: components["responses"]["400.not-understood"];
            401: components["responses"]["401.key-refused.not-authenticated"];
            403: components["responses"]["403.not-allowed.scope-missing"];
            404: components["responses"]["404.not-found"];
            412: components["responses"]["412.changed-since"];
            429: components["responses"]["429.too-often"];
            503: components["responses"]["503.busy"];
            default: components["responses"]["any-other"];
        };
    };
    service_keys_list: {
        parameters: {
            query?: {
                /** @description Of the page, as `next` and `previous` have it. */
                cursor?: string;
                /** @description So many on a page; left out, all are on one. */
                limit?: number;
            };
            header?: {
                /** @description The ETag seen last, several of them, or `*`: 304 where nothing has changed (RFC 9110, 13.1.2). */
                "If-None-Match"?: string;
            };
            path: {
                programme_id: string;
            };
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            200: {
                headers: {
                    /** @description Changes with all that is shown; If-None-Match takes it, and If-Match where a change asks for it. */
                    ETag?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["KeyList"];
                };
            };
            /** @description What is shown is what the ETag of If-None-Match is of. No body. */
            304: {
                headers: {
                    [name: string]: unknown;
                };
                content?: never;
            };
            400: components["responses"]["400.not-understood"];
            401: components["responses"]["401.key-refused.not-authenticated"];
            403: components["responses"]["403.key-opens-not.not-allowed"];
            404: components["responses"]["404.not-found"];
            412: components["responses"]["412.changed-since"];
            503: components["responses"]["503.busy"];
            default: components["responses"]["any-other"];
        };
    };
    service_keys_create: {
        parameters: {
            query?: never;
            header?: never;
            path: {
                programme_id: string;
            };
            cookie?: never;
        };
        requestBody: {
            content: {
                "application/json": components["schemas"]["KeyGivenRequest"];
            };
        };
        responses: {
            201: {
                headers: {
                    /** @description Where what was made lies. */
                    Location?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["KeyWithText"];
                };
            };
            400: components["responses"]["400.not-understood.parse-error"];
            401: components["responses"]["401.key-refused.not-authenticated"];
            403: components["responses"]["403.key-opens-not.not-allowed.token-missing"];
            404: components["responses"]["404.not-found"];
            408: components["responses"]["408.body-too-slow"];
            409: components["responses"]["409.conflict"];
            413: components["responses"]["413.body-too-long"];
            415: components["responses"]["415.unsupported-media-type"];
            422: components["responses"]["422.not-usable.password-wrong"];
            429: components["responses"]["429.too-many-tries.too-often"];
            503: components["responses"]["503.busy.took-too-long"];
            default: components["responses"]["any-other"];
        };
    };
    service_key_retrieve: {
        parameters: {
            query?: never;
            header?: {
                /** @description The ETag seen last, several of them, or `*`: 304 where nothing has changed (RFC 9110, 13.1.2). */
                "If-None-Match"?: string;
            };
            path: {
                key_id: string;
                programme_id: string;
            };
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            200: {
                headers: {
                    /** @description Changes with all that is shown; If-None-Match takes it, and If-Match where a change asks for it. */
                    ETag?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["KeyShown"];
                };
            };
            /** @description What is shown is what the ETag of If-None-Match is of. No body. */
            304: {
                headers: {
                    [name: string]: unknown;
                };
                content?: never;
            };
            400: components["responses"]["400.not-understood"];
            401: components["responses"]["401.key-refused.not-authenticated"];
            403: components["responses"]["403.key-opens-not.not-allowed"];
            404: components["responses"]["404.not-found"];
            412: components["responses"]["412.changed-since"];
            503: components["responses"]["503.busy"];
            default: components["responses"]["any-other"];
        };
    };
    service_key_destroy: {
        parameters: {
            query?: never;
            header?: never;
            path: {
                key_id: string;
                programme_id: string;
            };
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            /** @description No response body */
            204: {
                headers: {
                    [name: string]: unknown;
                };
                content?: never;
            };
            400: components["responses"]["400.not-understood"];
            401: components["responses"]["401.key-refused.not-authenticated"];
            403: components["responses"]["403.key-opens-not.not-allowed.token-missing"];
            404: components["responses"]["404.not-found"];
            503: components["responses"]["503.busy"];
            default: components["responses"]["any-other"];
        };
    };
    programme_techniques_list: {
        parameters: {
            query?: {
                /** @description Of the page, as `next` and `previous` have it. */
                cursor?: string;
                /** @description So many on a page; left out, all are on one. */
                limit?: number;
            };
            header?: {
                /** @description The ETag seen last, several of them, or `*`: 304 where nothing has changed (RFC 9110, 13.1.2). */
                "If-None-Match"?: string;
            };
            path: {
                programme_id: string;
            };
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            200: {
                headers: {
                    /** @description Changes with all that is shown; If-None-Match takes it, and If-Match where a change asks for it. */
                    ETag?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["TechniquesShown"];
                };
            };
            /** @description What is shown is what the ETag of If-None-Match is of. No body. */
            304: {
                headers: {
                    [name: string]: unknown;
                };
                content?: never;
            };
            400: components["responses"]["400.not-understood"];
            401: components["responses"]["401.key-refused.not-authenticated"];
            403: components["responses"]["403.scope-missing"];
            404: components["responses"]["404.not-found"];
            412: components["responses"]["412.changed-since"];
            429: components["responses"]["429.too-often"];
            503: components["responses"]["503.busy"];
            default: components["responses"]["any-other"];
        };
    };
    programme_techniques_create: {
        parameters: {
            query?: never;
            header?: {
                /** @description In quotation marks, up to 100 visible characters, such as a new UUID: sent again with the same key within a day, the same is not done again but answered as it was. 409, `still-under-way`, while the first goes on; 422, `idempotency-key-used-differently`, for anything else with the key. What was refused may be sent again. */
                "Idempotency-Key"?: string;
            };
            path: {
                programme_id: string;
            };
            cookie?: never;
        };
        requestBody?: {
            content: {
                "application/json": components["schemas"]["TechniqueGivenRequest"];
            };
        };
        responses: {
            200: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["TechniqueShown"];
                };
            };
            201: {
                headers: {
                    /** @description Where what was made lies. */
                    Location?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["TechniqueShown"];
                };
            };
            400: components["responses"]["400.not-understood.parse-error"];
            401: components["responses"]["401.key-refused.not-authenticated"];
            403: components["responses"]["403.key-opens-not.not-allowed.token-missing"];
            404: components["responses"]["404.not-found"];
            408: components["responses"]["408.body-too-slow"];
            409: components["responses"]["409.id-used-differently.still-under-way.taken-already"];
            413: components["responses"]["413.body-too-long"];
            415: components["responses"]["415.unsupported-media-type"];
            /**
             * @description - `idempotency-key-used-differently`: The `Idempotency-Key` came before, within a day, with another body, to another address or on another condition.
             *     - `not-usable`: Good data that cannot be used here.
             *     - `out-of-bounds`: A number lies outside the bounds of its quantity.
             *     - `technique-not-usable`: A technique that breaks a rule of techniques, or that is not there.
             */
            422: {
                headers: {
                    /** @description Names the request. Tell it to whoever looks after the server. */
                    "X-Request-Id"?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/problem+json": components["schemas"]["Problem"] & {
                        /** @enum {unknown} */
                        type?: "/api/v1/problems/idempotency-key-used-differently" | "/api/v1/problems/not-usable" | "/api/v1/problems/out-of-bounds" | "/api/v1/problems/technique-not-usable";
                    };
                };
            };
            503: components["responses"]["503.busy"];
            default: components["responses"]["any-other"];
        };
    };
    programme_technique_retrieve: {
        parameters: {
            query?: never;
            header?: {
                /** @description The ETag seen last, several of them, or `*`: 304 where nothing has changed (RFC 9110, 13.1.2). */
                "If-None-Match"?: string;
            };
            path: {
                key: string;
                programme_id: string;
            };
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            200: {
                headers: {
                    /** @description Changes with all that is shown; If-None-Match takes it, and If-Match where a change asks for it. */
                    ETag?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["TechniqueShown"];
                };
            };
            /** @description What is shown is what the ETag of If-None-Match is of. No body. */
            304: {
                headers: {
                    [name: string]: unknown;
                };
                content?: never;
            };
            400: components["responses"]["400.not-understood"];
            401: components["responses"]["401.key-refused.not-authenticated"];
            403: components["responses"]["403.scope-missing"];
            404: components["responses"]["404.not-found"];
            412: components["responses"]["412.changed-since"];
            429: components["responses"]["429.too-often"];
            503: components["responses"]["503.busy"];
            default: components["responses"]["any-other"];
        };
    };
    webhooks_list: {
        parameters: {
            query?: {
                /** @description Of the page, as `next` and `previous` have it. */
                cursor?: string;
                /** @description So many on a page; left out, all are on one. */
                limit?: number;
            };
            header?: {
                /** @description The ETag seen last, several of them, or `*`: 304 where nothing has changed (RFC 9110, 13.1.2). */
                "If-None-Match"?: string;
            };
            path: {
                programme_id: string;
            };
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            200: {
                headers: {
                    /** @description Changes with all that is shown; If-None-Match takes it, and If-Match where a change asks for it. */
                    ETag?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["WebhookList"];
                };
            };
            /** @description What is shown is what the ETag of If-None-Match is of. No body. */
            304: {
                headers: {
                    [name: string]: unknown;
                };
                content?: never;
            };
            400: components["responses"]["400.not-understood"];
            401: components["responses"]["401.key-refused.not-authenticated"];
            403: components["responses"]["403.not-allowed.scope-missing"];
            404: components["responses"]["404.not-found"];
            412: components["responses"]["412.changed-since"];
            429: components["responses"]["429.too-often"];
            503: components["responses"]["503.busy"];
            default: components["responses"]["any-other"];
        };
    };
    webhooks_create: {
        parameters: {
            query?: never;
            header?: never;
            path: {
                programme_id: string;
            };
            cookie?: never;
        };
        requestBody: {
            content: {
                "application/json": components["schemas"]["WebhookGivenRequest"];
            };
        };
        responses: {
            201: {
                headers: {
                    /** @description Where what was made lies. */
                    Location?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["WebhookWithSecret"];
                };
            };
            400: components["responses"]["400.not-understood.parse-error"];
            401: components["responses"]["401.key-refused.not-authenticated"];
            403: components["responses"]["403.not-allowed.scope-missing.token-missing"];
            404: components["responses"]["404.not-found"];
            408: components["responses"]["408.body-too-slow"];
            409: components["responses"]["409.conflict.not-of-this-feed"];
            413: components["responses"]["413.body-too-long"];
            415: components["responses"]["415.unsupported-media-type"];
            422: components["responses"]["422.not-usable"];
            429: components["responses"]["429.too-often"];
            503: components["responses"]["503.busy"];
            default: components["responses"]["any-other"];
        };
    };
    webhook_retrieve: {
        parameters: {
            query?: never;
            header?: {
                /** @description The ETag seen last, several of them, or `*`: 304 where nothing has changed (RFC 9110, 13.1.2). */
                "If-None-Match"?: string;
            };
            path: {
                programme_id: string;
                webhook_id: string;
            };
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            200: {
                headers: {
                    /** @description Changes with all that is shown; If-None-Match takes it, and If-Match where a change asks for it. */
                    ETag?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["WebhookShown"];
                };
            };
            /** @description What is shown is what the ETag of If-None-Match is of. No body. */
            304: {
                headers: {
                    [name: string]: unknown;
                };
                content?: never;
            };
            400: components["responses"]["400.not-understood"];
            401: components["responses"]["401.key-refused.not-authenticated"];
            403: components["responses"]["403.not-allowed.scope-missing"];
            404: components["responses"]["404.not-found"];
            412: components["responses"]["412.changed-since"];
            429: components["responses"]["429.too-often"];
            503: components["responses"]["503.busy"];
            default: components["responses"]["any-other"];
        };
    };
    webhook_destroy: {
        parameters: {
            query?: never;
            header?: never;
            path: {
                programme_id: string;
                webhook_id: string;
            };
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            /** @description No response body */
            204: {
                headers: {
                    [name: string]: unknown;
                };
                content?: never;
            };
            400: components["responses"]["400.not-understood"];
            401: components["responses"]["401.key-refused.not-authenticated"];
            403: components["responses"]["403.not-allowed.scope-missing.token-missing"];
            404: components["responses"]["404.not-found"];
            429: components["responses"]["429.too-often"];
            503: components["responses"]["503.busy"];
            default: components["responses"]["any-other"];
        };
    };
    webhook_update: {
        parameters: {
            query?: never;
            header: {
                /** @description The ETag of the webhook as you saw it. */
                "If-Match": string;
            };
            path: {
                programme_id: string;
                webhook_id: string;
            };
            cookie?: never;
        };
        requestBody?: {
            content: {
                "application/json": components["schemas"]["PatchedWebhookChangesRequest"];
            };
        };
        responses: {
            200: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["WebhookShown"];
                };
            };
            400: components["responses"]["400.not-understood.parse-error"];
            401: components["responses"]["401.key-refused.not-authenticated"];
            403: components["responses"]["403.not-allowed.scope-missing.token-missing"];
            404: components["responses"]["404.not-found"];
            408: components["responses"]["408.body-too-slow"];
            412: components["responses"]["412.changed-since"];
            413: components["responses"]["413.body-too-long"];
            415: components["responses"]["415.unsupported-media-type"];
            422: components["responses"]["422.not-usable"];
            428: components["responses"]["428.precondition-missing"];
            429: components["responses"]["429.too-often"];
            503: components["responses"]["503.busy"];
            default: components["responses"]["any-other"];
        };
    };
    webhook_deliveries_list: {
        parameters: {
            query?: {
                /** @description As in `next` or `previous`. */
                cursor?: string;
                /** @description So many on a page. */
                limit?: number;
            };
            header?: {
                /** @description The ETag seen last, several of them, or `*`: 304 where nothing has changed (RFC 9110, 13.1.2). */
                "If-None-Match"?: string;
            };
            path: {
                programme_id: string;
                webhook_id: string;
            };
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            200: {
                headers: {
                    /** @description Changes with all that is shown; If-None-Match takes it, and If-Match where a change asks for it. */
                    ETag?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["DeliveryPage"];
                };
            };
            /** @description What is shown is what the ETag of If-None-Match is of. No body. */
            304: {
                headers: {
                    [name: string]: unknown;
                };
                content?: never;
            };
            400: components["responses"]["400.not-understood"];
            401: components["responses"]["401.key-refused.not-authenticated"];
            403: components["responses"]["403.not-allowed.scope-missing"];
            404: components["responses"]["404.not-found"];
            412: components["responses"]["412.changed-since"];
            429: components["responses"]["429.too-often"];
            503: components["responses"]["503.busy"];
            default: components["responses"]["any-other"];
        };
    };
    webhook_deliveries_create: {
        parameters: {
            query?: never;
            header?: {
                /** @description In quotation marks, up to 100 visible characters, such as a new UUID: sent again with the same key within a day, the same is not done again but answered as it was. 409, `still-under-way`, while the first goes on; 422, `idempotency-key-used-differently`, for anything else with the key. What was refused may be sent again. */
                "Idempotency-Key"?: string;
            };
            path: {
                programme_id: string;
                webhook_id: string;
            };
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            201: {
                headers: {
                    /** @description Where what was made lies. */
                    Location?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["DeliveryShown"];
                };
            };
            400: components["responses"]["400.not-understood"];
            401: components["responses"]["401.key-refused.not-authenticated"];
            403: components["responses"]["403.not-allowed.scope-missing.token-missing"];
            404: components["responses"]["404.not-found"];
            409: components["responses"]["409.conflict.still-under-way"];
            422: components["responses"]["422.idempotency-key-used-differently"];
            429: components["responses"]["429.too-often"];
            503: components["responses"]["503.busy"];
            default: components["responses"]["any-other"];
        };
    };
    webhook_delivery_retrieve: {
        parameters: {
            query?: never;
            header?: {
                /** @description The ETag seen last, several of them, or `*`: 304 where nothing has changed (RFC 9110, 13.1.2). */
                "If-None-Match"?: string;
            };
            path: {
                delivery_id: string;
                programme_id: string;
                webhook_id: string;
            };
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            200: {
                headers: {
                    /** @description Changes with all that is shown; If-None-Match takes it, and If-Match where a change asks for it. */
                    ETag?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["DeliveryShown"];
                };
            };
            /** @description What is shown is what the ETag of If-None-Match is of. No body. */
            304: {
                headers: {
                    [name: string]: unknown;
                };
                content?: never;
            };
            400: components["responses"]["400.not-understood"];
            401: components["responses"]["401.key-refused.not-authenticated"];
            403: components["responses"]["403.not-allowed.scope-missing"];
            404: components["responses"]["404.not-found"];
            412: components["responses"]["412.changed-since"];
            429: components["responses"]["429.too-often"];
            503: components["responses"]["503.busy"];
            default: components["responses"]["any-other"];
        };
    };
    webhook_replay: {
        parameters: {
            query?: never;
            header?: {
                /** @description In quotation marks, up to 100 visible characters, such as a new UUID: sent again with the same key within a day, the same is not done again but answered as it was. 409, `still-under-way`, while the first goes on; 422, `idempotency-key-used-differently`, for anything else with the key. What was refused may be sent again. */
                "Idempotency-Key"?: string;
            };
            path: {
                programme_id: string;
                webhook_id: string;
            };
            cookie?: never;
        };
        requestBody: {
            content: {
                "application/json": components["schemas"]["ReplayGivenRequest"];
            };
        };
        responses: {
            200: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["WebhookShown"];
                };
            };
            400: components["responses"]["400.not-understood.parse-error"];
            401: components["responses"]["401.key-refused.not-authenticated"];
            403: components["responses"]["403.not-allowed.scope-missing.token-missing"];
            404: components["responses"]["404.not-found"];
            408: components["responses"]["408.body-too-slow"];
            409: components["responses"]["409.not-of-this-feed.still-under-way"];
            413: components["responses"]["413.body-too-long"];
            415: components["responses"]["415.unsupported-media-type"];
            422: components["responses"]["422.idempotency-key-used-differently"];
            429: components["responses"]["429.too-often"];
            503: components["responses"]["503.busy"];
            default: components["responses"]["any-other"];
        };
    };
    webhook_secret_create: {
        parameters: {
            query?: never;
            header?: never;
            path: {
                programme_id: string;
                webhook_id: string;
            };
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            200: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["WebhookWithSecret"];
                };
            };
            400: components["responses"]["400.not-understood"];
            401: components["responses"]["401.key-refused.not-authenticated"];
            403: components["responses"]["403.not-allowed.scope-missing.token-missing"];
            404: components["responses"]["404.not-found"];
            429: components["responses"]["429.too-often"];
            503: components["responses"]["503.busy"];
            default: components["responses"]["any-other"];
        };
    };
    programme_widths_list: {
        parameters: {
            query?: {
                /** @description Of the page, as `next` and `previous` have it. */
                cursor?: string;
                /** @description So many on a page; left out, all are on one. */
                limit?: number;
            };
            header?: {
                /** @description The ETag seen last, several of them, or `*`: 304 where nothing has changed (RFC 9110, 13.1.2). */
                "If-None-Match"?: string;
            };
            path: {
                programme_id: string;
            };
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            200: {
                headers: {
                    /** @description Changes with all that is shown; If-None-Match takes it, and If-Match where a change asks for it. */
                    ETag?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["WidthsListed"];
                };
            };
            /** @description What is shown is what the ETag of If-None-Match is of. No body. */
            304: {
                headers: {
                    [name: string]: unknown;
                };
                content?: never;
            };
            400: components["responses"]["400.not-understood"];
            401: components["responses"]["401.key-refused.not-authenticated"];
            403: components["responses"]["403.scope-missing"];
            404: components["responses"]["404.not-found"];
            412: components["responses"]["412.changed-since"];
            429: components["responses"]["429.too-often"];
            503: components["responses"]["503.busy"];
            default: components["responses"]["any-other"];
        };
    };
    programme_widths_update: {
        parameters: {
            query?: never;
            header?: never;
            path: {
                canal: string;
                programme_id: string;
                tooth: string;
            };
            cookie?: never;
        };
        requestBody: {
            content: {
                "application/json": components["schemas"]["WidthsGivenRequest"];
            };
        };
        responses: {
            200: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["WidthsShown"];
                };
            };
            400: components["responses"]["400.not-understood.parse-error"];
            401: components["responses"]["401.key-refused.not-authenticated"];
            403: components["responses"]["403.key-opens-not.not-allowed.token-missing"];
            404: components["responses"]["404.not-found"];
            408: components["responses"]["408.body-too-slow"];
            413: components["responses"]["413.body-too-long"];
            415: components["responses"]["415.unsupported-media-type"];
            422: components["responses"]["422.canals-do-not-fit.not-usable.out-of-bounds"];
            503: components["responses"]["503.busy"];
            default: components["responses"]["any-other"];
        };
    };
    programme_widths_destroy: {
        parameters: {
            query?: never;
            header?: never;
            path: {
                canal: string;
                programme_id: string;
                tooth: string;
            };
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            /** @description No response body */
            204: {
                headers: {
                    [name: string]: unknown;
                };
                content?: never;
            };
            400: components["responses"]["400.not-understood"];
            401: components["responses"]["401.key-refused.not-authenticated"];
            403: components["responses"]["403.key-opens-not.not-allowed.token-missing"];
            404: components["responses"]["404.not-found"];
            503: components["responses"]["503.busy"];
            default: components["responses"]["any-other"];
        };
    };
    worklist: {
        parameters: {
            query?: {
                /** @description As in `next` or `previous`. */
                cursor?: string;
                /** @description So many on a page. */
                limit?: number;
            };
            header?: {
                /** @description The ETag seen last, several of them, or `*`: 304 where nothing has changed (RFC 9110, 13.1.2). */
                "If-None-Match"?: string;
            };
            path: {
                programme_id: string;
            };
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            200: {
                headers: {
                    /** @description Changes with all that is shown; If-None-Match takes it, and If-Match where a change asks for it. */
                    ETag?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["WorkList"];
                };
            };
            /** @description What is shown is what the ETag of If-None-Match is of. No body. */
            304: {
                headers: {
                    [name: string]: unknown;
                };
                content?: never;
            };
            400: components["responses"]["400.not-understood"];
            401: components["responses"]["401.key-refused.not-authenticated"];
            403: components["responses"]["403.not-allowed.scope-missing"];
            404: components["responses"]["404.not-found"];
            412: components["responses"]["412.changed-since"];
            429: components["responses"]["429.too-often"];
            503: components["responses"]["503.busy"];
            default: components["responses"]["any-other"];
        };
    };
    push_key_retrieve: {
        parameters: {
            query?: never;
            header?: {
                /** @description The ETag seen last, several of them, or `*`: 304 where nothing has changed (RFC 9110, 13.1.2). */
                "If-None-Match"?: string;
            };
            path?: never;
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            200: {
                headers: {
                    /** @description Changes with all that is shown; If-None-Match takes it, and If-Match where a change asks for it. */
                    ETag?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["PushKeyShown"];
                };
            };
            /** @description What is shown is what the ETag of If-None-Match is of. No body. */
            304: {
                headers: {
                    [name: string]: unknown;
                };
                content?: never;
            };
            400: components["responses"]["400.not-understood"];
            401: components["responses"]["401.key-refused.not-authenticated"];
            403: components["responses"]["403.key-opens-not"];
            412: components["responses"]["412.changed-since"];
            503: components["responses"]["503.busy"];
            default: components["responses"]["any-other"];
        };
    };
    push_subscription_update: {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        requestBody: {
            content: {
                "application/json": components["schemas"]["PushSubscriptionGivenRequest"];
            };
        };
        responses: {
            /** @description No response body */
            204: {
                headers: {
                    [name: string]: unknown;
                };
                content?: never;
            };
            400: components["responses"]["400.not-understood.parse-error"];
            401: components["responses"]["401.key-refused.not-authenticated"];
            403: components["responses"]["403.key-opens-not.not-allowed.token-missing"];
            408: components["responses"]["408.body-too-slow"];
            413: components["responses"]["413.body-too-long"];
            415: components["responses"]["415.unsupported-media-type"];
            422: components["responses"]["422.not-usable"];
            503: components["responses"]["503.busy"];
            default: components["responses"]["any-other"];
        };
    };
    push_subscription_destroy: {
        parameters: {
            query: {
                /** @description HTTPS, at a public name. */
                endpoint: string;
            };
            header?: never;
            path?: never;
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            /** @description No response body */
            204: {
                headers: {
                    [name: string]: unknown;
                };
                content?: never;
            };
            400: components["responses"]["400.not-understood"];
            401: components["responses"]["401.key-refused.not-authenticated"];
            403: components["responses"]["403.key-opens-not.token-missing"];
            503: components["responses"]["503.busy"];
            default: components["responses"]["any-other"];
        };
    };
    reading_retrieve: {
        parameters: {
            query?: never;
            header?: {
                /** @description The ETag seen last, several of them, or `*`: 304 where nothing has changed (RFC 9110, 13.1.2). */
                "If-None-Match"?: string;
            };
            path: {
                reading_id: string;
            };
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            200: {
                headers: {
                    /** @description Changes with all that is shown; If-None-Match takes it, and If-Match where a change asks for it. */
                    ETag?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["ReadingShown"];
                };
            };
            /** @description What is shown is what the ETag of If-None-Match is of. No body. */
            304: {
                headers: {
                    [name: string]: unknown;
                };
                content?: never;
            };
            400: components["responses"]["400.not-understood"];
            401: components["responses"]["401.key-refused.not-authenticated"];
            403: components["responses"]["403.scope-missing"];
            404: components["responses"]["404.not-found"];
            412: components["responses"]["412.changed-since"];
            429: components["responses"]["429.too-often"];
            503: components["responses"]["503.busy"];
            default: components["responses"]["any-other"];
        };
    };
    reading_strike: {
        parameters: {
            query?: never;
            header?: {
                /** @description In quotation marks, up to 100 visible characters, such as a new UUID: sent again with the same key within a day, the same is not done again but answered as it was. 409, `still-under-way`, while the first goes on; 422, `idempotency-key-used-differently`, for anything else with the key. What was refused may be sent again. */
                "Idempotency-Key"?: string;
            };
            path: {
                reading_id: string;
            };
            cookie?: never;
        };
        requestBody: {
            content: {
                "application/json": components["schemas"]["StrikeGivenRequest"];
            };
        };
        responses: {
            200: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["CanalShown"];
                };
            };
            400: components["responses"]["400.not-understood.parse-error"];
            401: components["responses"]["401.key-refused.not-authenticated"];
            403: components["responses"]["403.not-allowed.scope-missing.token-missing"];
            404: components["responses"]["404.not-found"];
            408: components["responses"]["408.body-too-slow"];
            409: components["responses"]["409.still-under-way"];
            413: components["responses"]["413.body-too-long"];
            415: components["responses"]["415.unsupported-media-type"];
            422: components["responses"]["422.idempotency-key-used-differently"];
            429: components["responses"]["429.too-often"];
            503: components["responses"]["503.busy"];
            default: components["responses"]["any-other"];
        };
    };
    session_retrieve: {
        parameters: {
            query?: never;
            header?: {
                /** @description The ETag seen last, several of them, or `*`: 304 where nothing has changed (RFC 9110, 13.1.2). */
                "If-None-Match"?: string;
            };
            path?: never;
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            200: {
                headers: {
                    /** @description Changes with all that is shown; If-None-Match takes it, and If-Match where a change asks for it. */
                    ETag?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["SessionShown"];
                };
            };
            /** @description Nobody is signed in. */
            204: {
                headers: {
                    [name: string]: unknown;
                };
                content?: never;
            };
            /** @description What is shown is what the ETag of If-None-Match is of. No body. */
            304: {
                headers: {
                    [name: string]: unknown;
                };
                content?: never;
            };
            400: components["responses"]["400.not-understood"];
            401: components["responses"]["401.key-refused"];
            403: components["responses"]["403.key-opens-not"];
            412: components["responses"]["412.changed-since"];
            503: components["responses"]["503.busy"];
            default: components["responses"]["any-other"];
        };
    };
    session_create: {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        requestBody: {
            content: {
                "application/json": components["schemas"]["SignInRequest"];
            };
        };
        responses: {
            200: {
                headers: {
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["SessionShown"];
                };
            };
            400: components["responses"]["400.not-understood.parse-error"];
            401: components["responses"]["401.key-refused.sign-in-refused"];
            403: components["responses"]["403.key-opens-not.token-missing"];
            408: components["responses"]["408.body-too-slow"];
            413: components["responses"]["413.body-too-long"];
            415: components["responses"]["415.unsupported-media-type"];
            429: components["responses"]["429.too-many-tries.too-often"];
            503: components["responses"]["503.busy.took-too-long"];
            default: components["responses"]["any-other"];
        };
    };
    session_destroy: {
        parameters: {
            query?: never;
            header?: never;
            path?: never;
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            /** @description No response body */
            204: {
                headers: {
                    [name: string]: unknown;
                };
                content?: never;
            };
            400: components["responses"]["400.not-understood"];
            401: components["responses"]["401.key-refused"];
            403: components["responses"]["403.key-opens-not.token-missing"];
            503: components["responses"]["503.busy"];
            default: components["responses"]["any-other"];
        };
    };
    techniques_list: {
        parameters: {
            query?: {
                /** @description Of the page, as `next` and `previous` have it. */
                cursor?: string;
                /** @description So many on a page; left out, all are on one. */
                limit?: number;
            };
            header?: {
                /** @description The ETag seen last, several of them, or `*`: 304 where nothing has changed (RFC 9110, 13.1.2). */
                "If-None-Match"?: string;
            };
            path?: never;
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            200: {
                headers: {
                    /** @description Changes with all that is shown; If-None-Match takes it, and If-Match where a change asks for it. */
                    ETag?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["Techniques"];
                };
            };
            /** @description What is shown is what the ETag of If-None-Match is of. No body. */
            304: {
                headers: {
                    [name: string]: unknown;
                };
                content?: never;
            };
            400: components["responses"]["400.not-understood"];
            401: components["responses"]["401.key-refused"];
            412: components["responses"]["412.changed-since"];
            429: components["responses"]["429.too-often"];
            503: components["responses"]["503.busy"];
            default: components["responses"]["any-other"];
        };
    };
    teeth_list: {
        parameters: {
            query?: {
                /** @description Of the page, as `next` and `previous` have it. */
                cursor?: string;
                /** @description So many on a page; left out, all are on one. */
                limit?: number;
            };
            header?: {
                /** @description The ETag seen last, several of them, or `*`: 304 where nothing has changed (RFC 9110, 13.1.2). */
                "If-None-Match"?: string;
            };
            path?: never;
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            200: {
                headers: {
                    /** @description Changes with all that is shown; If-None-Match takes it, and If-Match where a change asks for it. */
                    ETag?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["Teeth"];
                };
            };
            /** @description What is shown is what the ETag of If-None-Match is of. No body. */
            304: {
                headers: {
                    [name: string]: unknown;
                };
                content?: never;
            };
            400: components["responses"]["400.not-understood"];
            401: components["responses"]["401.key-refused"];
            412: components["responses"]["412.changed-since"];
            429: components["responses"]["429.too-often"];
            503: components["responses"]["503.busy"];
            default: components["responses"]["any-other"];
        };
    };
    teeth_retrieve: {
        parameters: {
            query?: never;
            header?: {
                /** @description The ETag seen last, several of them, or `*`: 304 where nothing has changed (RFC 9110, 13.1.2). */
                "If-None-Match"?: string;
            };
            path: {
                /** @description ISO 3950 designation */
                iso: string;
            };
            cookie?: never;
        };
        requestBody?: never;
        responses: {
            200: {
                headers: {
                    /** @description Changes with all that is shown; If-None-Match takes it, and If-Match where a change asks for it. */
                    ETag?: string;
                    [name: string]: unknown;
                };
                content: {
                    "application/json": components["schemas"]["Tooth"];
                };
            };
            /** @description What is shown is what the ETag of If-None-Match is of. No body. */
            304: {
                headers: {
                    [name: string]: unknown;
                };
                content?: never;
            };
            400: components["responses"]["400.not-understood"];
            401: components["responses"]["401.key-refused"];
            404: components["responses"]["404.not-found"];
            412: components["responses"]["412.changed-since"];
            429: components["responses"]["429.too-often"];
            503: components["responses"]["503.busy"];
            default: components["responses"]["any-other"];
        };
    };
    changed: {
        parameters: {
            query?: never;
            header: {
                /** @description Of the message; the same each time it is sent. Whoever has had it may leave it aside. */
                "webhook-id": string;
                /** @description `v1,` and the HMAC-SHA256, in base64, of `<webhook-id>.<webhook-timestamp>.<body>` with the secret, which is the base64 after `whsec_`. Several, with a blank between them, while a secret is turned. */
                "webhook-signature": string;
                /** @description When it was sent, in seconds since 1970. Refuse what is minutes old. */
                "webhook-timestamp": string;
            };
            path?: never;
            cookie?: never;
        };
        requestBody: {
            content: {
                "application/json": components["schemas"]["ChangeMessage"];
            };
        };
        responses: {
            /** @description Taken. */
            "2XX": {
                headers: {
                    [name: string]: unknown;
                };
                content?: never;
            };
            /** @description Send nothing more: the webhook is given up. */
            410: {
                headers: {
                    [name: string]: unknown;
                };
                content?: never;
            };
            /** @description Send it again. */
            default: {
                headers: {
                    [name: string]: unknown;
                };
                content?: never;
            };
        };
    };
    test: {
        parameters: {
            query?: never;
            header: {
                /** @description Of the message; the same each time it is sent. Whoever has had it may leave it aside. */
                "webhook-id": string;
                /** @description `v1,` and the HMAC-SHA256, in base64, of `<webhook-id>.<webhook-timestamp>.<body>` with the secret, which is the base64 after `whsec_`. Several, with a blank between them, while a secret is turned. */
                "webhook-signature": string;
                /** @description When it was sent, in seconds since 1970. Refuse what is minutes old. */
                "webhook-timestamp": string;
            };
            path?: never;
            cookie?: never;
        };
        requestBody: {
            content: {
                "application/json": components["schemas"]["TestMessage"];
            };
        };
        responses: {
            /** @description Taken. */
            "2XX": {
                headers: {
                    [name: string]: unknown;
                };
                content?: never;
            };
            /** @description Send nothing more: the webhook is given up. */
            410: {
                headers: {
                    [name: string]: unknown;
                };
                content?: never;
            };
            /** @description Send it again. */
            default: {
                headers: {
                    [name: string]: unknown;
                };
                content?: never;
            };
        };
    };
}
