PRAGMA foreign_keys=OFF;
BEGIN TRANSACTION;
CREATE TABLE IF NOT EXISTS "kind" (
  "word" TEXT PRIMARY KEY
) STRICT, WITHOUT ROWID;
INSERT INTO kind VALUES('calculated');
INSERT INTO kind VALUES('cause_checked');
INSERT INTO kind VALUES('cause_numbers');
INSERT INTO kind VALUES('cause_put_right');
INSERT INTO kind VALUES('complaint');
INSERT INTO kind VALUES('hold_answer');
INSERT INTO kind VALUES('instrument');
INSERT INTO kind VALUES('instrument_check');
INSERT INTO kind VALUES('job_closed');
INSERT INTO kind VALUES('job_opened');
INSERT INTO kind VALUES('labour');
INSERT INTO kind VALUES('learning_left_out');
INSERT INTO kind VALUES('ledger_move');
INSERT INTO kind VALUES('lesson');
INSERT INTO kind VALUES('note');
INSERT INTO kind VALUES('observation');
INSERT INTO kind VALUES('override');
INSERT INTO kind VALUES('part_used');
INSERT INTO kind VALUES('person');
INSERT INTO kind VALUES('photo');
INSERT INTO kind VALUES('procedure_text');
INSERT INTO kind VALUES('reading');
INSERT INTO kind VALUES('recheck_done');
INSERT INTO kind VALUES('recheck_due');
INSERT INTO kind VALUES('road_test');
INSERT INTO kind VALUES('run_started');
INSERT INTO kind VALUES('series');
INSERT INTO kind VALUES('shake_told');
INSERT INTO kind VALUES('shim_pack');
INSERT INTO kind VALUES('shop_named');
INSERT INTO kind VALUES('spec_item');
INSERT INTO kind VALUES('step_mark');
INSERT INTO kind VALUES('support_chosen');
INSERT INTO kind VALUES('timer_started');
INSERT INTO kind VALUES('torque_check');
INSERT INTO kind VALUES('vehicle');
INSERT INTO kind VALUES('verdict');
INSERT INTO kind VALUES('withdrawal');
INSERT INTO kind VALUES('work_declined');
CREATE TABLE IF NOT EXISTS "quantity_kind" (
  "word" TEXT PRIMARY KEY
) STRICT, WITHOUT ROWID;
INSERT INTO quantity_kind VALUES('angle');
INSERT INTO quantity_kind VALUES('area');
INSERT INTO quantity_kind VALUES('duration');
INSERT INTO quantity_kind VALUES('force');
INSERT INTO quantity_kind VALUES('frequency');
INSERT INTO quantity_kind VALUES('length');
INSERT INTO quantity_kind VALUES('mass');
INSERT INTO quantity_kind VALUES('number');
INSERT INTO quantity_kind VALUES('pressure');
INSERT INTO quantity_kind VALUES('speed');
INSERT INTO quantity_kind VALUES('stiffness');
INSERT INTO quantity_kind VALUES('temperature_difference');
INSERT INTO quantity_kind VALUES('torque');
INSERT INTO quantity_kind VALUES('unbalance');
INSERT INTO quantity_kind VALUES('volume');
CREATE TABLE IF NOT EXISTS "entry" (
  "id" INTEGER PRIMARY KEY CHECK ("id" > 0),
  "job" INTEGER CHECK ("job" > 0),
  "run" INTEGER REFERENCES "entry" ("id"),
  "step" TEXT NOT NULL CHECK (instr("step", char(0)) = 0),
  "side" TEXT CHECK ("side" IN ('left', 'right')),
  "kind" TEXT NOT NULL REFERENCES "kind" ("word"),
  "done_at" TEXT NOT NULL CHECK (length("done_at") = 24),
  "done_offset" INTEGER NOT NULL CHECK (abs("done_offset") <= 1440),
  "entered_at" TEXT NOT NULL CHECK (length("entered_at") = 24),
  "entered_offset" INTEGER NOT NULL CHECK (abs("entered_offset") <= 1440),
  "by_person" INTEGER REFERENCES "entry" ("id"),
  "replaces" INTEGER UNIQUE REFERENCES "entry" ("id") CHECK ("replaces" < "id"),
  "reason" TEXT CHECK ("reason" IN ('typing_slip', 'wrong_side', 'wrong_unit', 'bad_pull',
      'withdrawn', 'other')),
  "reason_text" TEXT NOT NULL CHECK (instr("reason_text", char(0)) = 0),
  "program_version" TEXT NOT NULL CHECK (instr("program_version", char(0)) = 0),
  CHECK ("replaces" IS NULL OR "reason" IS NOT NULL),
  CHECK ("kind" <> 'withdrawal' OR "replaces" IS NOT NULL)
) STRICT;
INSERT INTO entry VALUES(1,NULL,NULL,'',NULL,'person','2031-03-22T20:40:01.000Z',120,'2031-03-22T20:40:01.500Z',120,NULL,NULL,NULL,'','0.1.0');
INSERT INTO entry VALUES(2,NULL,NULL,'',NULL,'instrument','2031-03-22T20:40:02.000Z',120,'2031-03-22T20:40:02.500Z',120,1,NULL,NULL,'','0.1.0');
INSERT INTO entry VALUES(3,NULL,NULL,'',NULL,'vehicle','2031-03-22T20:40:03.000Z',120,'2031-03-22T20:40:03.500Z',120,1,NULL,NULL,'','0.1.0');
INSERT INTO entry VALUES(4,NULL,NULL,'',NULL,'procedure_text','2031-03-22T20:40:04.000Z',120,'2031-03-22T20:40:04.500Z',120,1,NULL,NULL,'','0.1.0');
INSERT INTO entry VALUES(5,1,NULL,'',NULL,'job_opened','2031-03-22T20:40:05.000Z',120,'2031-03-22T20:40:05.500Z',120,1,NULL,NULL,'','0.1.0');
INSERT INTO entry VALUES(6,1,NULL,'',NULL,'run_started','2031-03-22T20:40:06.000Z',120,'2031-03-22T20:40:06.500Z',120,1,NULL,NULL,'','0.1.0');
INSERT INTO entry VALUES(7,1,6,'pull','left','series','2031-03-22T20:40:07.000Z',120,'2031-03-22T20:40:07.500Z',120,1,NULL,NULL,'','0.1.0');
INSERT INTO entry VALUES(8,1,6,'pull','left','reading','2031-03-22T20:40:08.000Z',120,'2031-03-22T20:40:08.500Z',120,1,NULL,NULL,'','0.1.0');
INSERT INTO entry VALUES(9,NULL,NULL,'äé€','right','spec_item','2031-03-22T20:40:09.000Z',598,'2031-03-22T20:40:09.500Z',120,1,NULL,NULL,'?=1+1','0.1.0');
INSERT INTO entry VALUES(10,NULL,NULL,'25.0é''; DROP TABLE entry; --',NULL,'instrument_check','2031-03-22T20:40:10.000Z',-366,'2031-03-22T20:40:10.500Z',120,1,NULL,NULL,'0é?','0.1.0');
INSERT INTO entry VALUES(11,NULL,NULL,'','right','person','2031-03-22T20:40:11.000Z',201,'2031-03-22T20:40:11.500Z',120,1,NULL,NULL,'','0.1.0');
INSERT INTO entry VALUES(12,NULL,NULL,'é','left','person','2031-03-22T20:40:12.000Z',302,'2031-03-22T20:40:12.500Z',120,1,11,'other','0z﻿','0.1.0');
INSERT INTO entry VALUES(13,NULL,NULL,'?',NULL,'instrument','2031-03-22T20:40:13.000Z',-107,'2031-03-22T20:40:13.500Z',120,1,NULL,NULL,'z﻿','0.1.0');
INSERT INTO entry VALUES(14,NULL,NULL,'🔧‮',NULL,'instrument','2031-03-22T20:40:14.000Z',382,'2031-03-22T20:40:14.500Z',120,1,13,'other',replace('\n?%1é','\n',char(10)),'0.1.0');
INSERT INTO entry VALUES(15,NULL,NULL,'é\‮','right','instrument_check','2031-03-22T20:40:15.000Z',-459,'2031-03-22T20:40:15.500Z',120,1,NULL,NULL,'🔧é''; DROP TABLE entry; --''; DROP TABLE entry; --:name','0.1.0');
INSERT INTO entry VALUES(16,NULL,NULL,'‮"NULL25.0',NULL,'instrument_check','2031-03-22T20:40:16.000Z',-48,'2031-03-22T20:40:16.500Z',120,1,15,'other','','0.1.0');
INSERT INTO entry VALUES(17,NULL,NULL,'€z﻿%1\ ',NULL,'vehicle','2031-03-22T20:40:17.000Z',391,'2031-03-22T20:40:17.500Z',120,1,NULL,NULL,'"?é','0.1.0');
INSERT INTO entry VALUES(18,NULL,NULL,'?25.0z﻿',NULL,'vehicle','2031-03-22T20:40:18.000Z',-783,'2031-03-22T20:40:18.500Z',120,1,17,'other','=1+1','0.1.0');
INSERT INTO entry VALUES(19,NULL,NULL,'NULL',NULL,'spec_item','2031-03-22T20:40:19.000Z',-378,'2031-03-22T20:40:19.500Z',120,1,NULL,NULL,'€?€‮=1+1','0.1.0');
INSERT INTO entry VALUES(20,NULL,NULL,'‮:name 🔧','left','spec_item','2031-03-22T20:40:20.000Z',152,'2031-03-22T20:40:20.500Z',120,1,19,'other',':nameNULL','0.1.0');
INSERT INTO entry VALUES(21,NULL,NULL,'%1?NULL',NULL,'procedure_text','2031-03-22T20:40:21.000Z',754,'2031-03-22T20:40:21.500Z',120,1,NULL,NULL,'','0.1.0');
INSERT INTO entry VALUES(22,NULL,NULL,'🔧','right','procedure_text','2031-03-22T20:40:22.000Z',-378,'2031-03-22T20:40:22.500Z',120,1,21,'other','ä\','0.1.0');
INSERT INTO entry VALUES(23,1,NULL,replace('	\n''; DROP TABLE entry; --"\','\n',char(10)),'left','job_opened','2031-03-22T20:40:23.000Z',-403,'2031-03-22T20:40:23.500Z',120,1,NULL,NULL,'NULL	','0.1.0');
INSERT INTO entry VALUES(24,1,NULL,'ä	é%1NULL','right','job_opened','2031-03-22T20:40:24.000Z',-772,'2031-03-22T20:40:24.500Z',120,1,23,'other','''; DROP TABLE entry; --','0.1.0');
INSERT INTO entry VALUES(25,1,NULL,'‮€äNULL','right','complaint','2031-03-22T20:40:25.000Z',-137,'2031-03-22T20:40:25.500Z',120,1,NULL,NULL,'ä','0.1.0');
INSERT INTO entry VALUES(26,1,NULL,'<b>','left','complaint','2031-03-22T20:40:26.000Z',-380,'2031-03-22T20:40:26.500Z',120,1,25,'other',':nameä0 ','0.1.0');
INSERT INTO entry VALUES(27,1,NULL,'25.0=1+1	',NULL,'cause_checked','2031-03-22T20:40:27.000Z',-592,'2031-03-22T20:40:27.500Z',120,1,NULL,NULL,' 25.025.0"','0.1.0');
INSERT INTO entry VALUES(28,1,NULL,'',NULL,'cause_checked','2031-03-22T20:40:28.000Z',118,'2031-03-22T20:40:28.500Z',120,1,27,'other','','0.1.0');
INSERT INTO entry VALUES(29,1,NULL,'NULL',NULL,'run_started','2031-03-22T20:40:29.000Z',693,'2031-03-22T20:40:29.500Z',120,1,NULL,NULL,' z﻿','0.1.0');
INSERT INTO entry VALUES(30,1,NULL,replace('\n‮éz﻿','\n',char(10)),NULL,'run_started','2031-03-22T20:40:30.000Z',-697,'2031-03-22T20:40:30.500Z',120,1,29,'other','=1+1','0.1.0');
INSERT INTO entry VALUES(31,1,NULL,'',NULL,'support_chosen','2031-03-22T20:40:31.000Z',488,'2031-03-22T20:40:31.500Z',120,1,NULL,NULL,'''; DROP TABLE entry; --<b>"','0.1.0');
INSERT INTO entry VALUES(32,1,NULL,replace('z﻿\nz﻿"','\n',char(10)),NULL,'support_chosen','2031-03-22T20:40:32.000Z',368,'2031-03-22T20:40:32.500Z',120,1,31,'other','''; DROP TABLE entry; --€	','0.1.0');
INSERT INTO entry VALUES(33,1,NULL,'NULL','left','hold_answer','2031-03-22T20:40:33.000Z',-836,'2031-03-22T20:40:33.500Z',120,1,NULL,NULL,'','0.1.0');
INSERT INTO entry VALUES(34,1,NULL,' ',NULL,'hold_answer','2031-03-22T20:40:34.000Z',351,'2031-03-22T20:40:34.500Z',120,1,33,'other','é:name🔧','0.1.0');
INSERT INTO entry VALUES(35,1,NULL,'NULL🔧NULL<b>',NULL,'step_mark','2031-03-22T20:40:35.000Z',-78,'2031-03-22T20:40:35.500Z',120,1,NULL,NULL,'‮ä=1+1é','0.1.0');
INSERT INTO entry VALUES(36,1,NULL,'"	\0	','left','step_mark','2031-03-22T20:40:36.000Z',-283,'2031-03-22T20:40:36.500Z',120,1,35,'other','NULL:name25.0','0.1.0');
INSERT INTO entry VALUES(37,1,NULL,'25.0','right','observation','2031-03-22T20:40:37.000Z',533,'2031-03-22T20:40:37.500Z',120,1,NULL,NULL,'','0.1.0');
INSERT INTO entry VALUES(38,1,NULL,'z﻿"ä0',NULL,'observation','2031-03-22T20:40:38.000Z',-309,'2031-03-22T20:40:38.500Z',120,1,37,'other','25.0%1','0.1.0');
INSERT INTO entry VALUES(39,1,NULL,'é',NULL,'series','2031-03-22T20:40:39.000Z',-607,'2031-03-22T20:40:39.500Z',120,1,NULL,NULL,'z﻿€"0🔧','0.1.0');
INSERT INTO entry VALUES(40,1,NULL,'',NULL,'series','2031-03-22T20:40:40.000Z',485,'2031-03-22T20:40:40.500Z',120,1,39,'other',replace('🔧 NULL\n','\n',char(10)),'0.1.0');
INSERT INTO entry VALUES(41,1,NULL,'00','right','reading','2031-03-22T20:40:41.000Z',703,'2031-03-22T20:40:41.500Z',120,1,NULL,NULL,'NULLNULL','0.1.0');
INSERT INTO entry VALUES(42,1,NULL,'?NULL0',NULL,'reading','2031-03-22T20:40:42.000Z',714,'2031-03-22T20:40:42.500Z',120,1,41,'other','\🔧','0.1.0');
INSERT INTO entry VALUES(43,1,NULL,'‮NULLé','left','verdict','2031-03-22T20:40:43.000Z',301,'2031-03-22T20:40:43.500Z',120,1,NULL,NULL,'z﻿ä\ä','0.1.0');
INSERT INTO entry VALUES(44,1,NULL,'ää🔧','right','verdict','2031-03-22T20:40:44.000Z',310,'2031-03-22T20:40:44.500Z',120,1,43,'other','','0.1.0');
INSERT INTO entry VALUES(45,1,NULL,'€''; DROP TABLE entry; --<b>','right','torque_check','2031-03-22T20:40:45.000Z',-692,'2031-03-22T20:40:45.500Z',120,1,NULL,NULL,'''; DROP TABLE entry; --','0.1.0');
INSERT INTO entry VALUES(46,1,NULL,'NULL🔧','right','torque_check','2031-03-22T20:40:46.000Z',779,'2031-03-22T20:40:46.500Z',120,1,45,'other','é''; DROP TABLE entry; --=1+1','0.1.0');
INSERT INTO entry VALUES(47,1,NULL,'''; DROP TABLE entry; --:name"NULL','left','ledger_move','2031-03-22T20:40:47.000Z',372,'2031-03-22T20:40:47.500Z',120,1,NULL,NULL,replace('=1+1\n','\n',char(10)),'0.1.0');
INSERT INTO entry VALUES(48,1,NULL,'?\','left','ledger_move','2031-03-22T20:40:48.000Z',-788,'2031-03-22T20:40:48.500Z',120,1,47,'other','''; DROP TABLE entry; --','0.1.0');
INSERT INTO entry VALUES(49,1,NULL,replace('\n','\n',char(10)),'left','part_used','2031-03-22T20:40:49.000Z',596,'2031-03-22T20:40:49.500Z',120,1,NULL,NULL,'NULLz﻿🔧ä\','0.1.0');
INSERT INTO entry VALUES(50,1,NULL,replace('\nNULL"','\n',char(10)),'right','part_used','2031-03-22T20:40:50.000Z',431,'2031-03-22T20:40:50.500Z',120,1,49,'other','‮🔧','0.1.0');
INSERT INTO entry VALUES(51,1,NULL,replace('\nä','\n',char(10)),'left','shim_pack','2031-03-22T20:40:51.000Z',0,'2031-03-22T20:40:51.500Z',120,1,NULL,NULL,'','0.1.0');
INSERT INTO entry VALUES(52,1,NULL,'''; DROP TABLE entry; --"‮''; DROP TABLE entry; --','right','shim_pack','2031-03-22T20:40:52.000Z',754,'2031-03-22T20:40:52.500Z',120,1,51,'other','25.0','0.1.0');
INSERT INTO entry VALUES(53,1,NULL,'	',NULL,'labour','2031-03-22T20:40:53.000Z',-78,'2031-03-22T20:40:53.500Z',120,1,NULL,NULL,'€<b>','0.1.0');
INSERT INTO entry VALUES(54,1,NULL,'=1+1%1',NULL,'labour','2031-03-22T20:40:54.000Z',128,'2031-03-22T20:40:54.500Z',120,1,53,'other','','0.1.0');
INSERT INTO entry VALUES(55,1,NULL,'',NULL,'work_declined','2031-03-22T20:40:55.000Z',-668,'2031-03-22T20:40:55.500Z',120,1,NULL,NULL,'z﻿	NULL''; DROP TABLE entry; --','0.1.0');
INSERT INTO entry VALUES(56,1,NULL,'','right','work_declined','2031-03-22T20:40:56.000Z',-219,'2031-03-22T20:40:56.500Z',120,1,55,'other','=1+1NULL\','0.1.0');
INSERT INTO entry VALUES(57,1,NULL,'	',NULL,'note','2031-03-22T20:40:57.000Z',671,'2031-03-22T20:40:57.500Z',120,1,NULL,NULL,'?ä','0.1.0');
INSERT INTO entry VALUES(58,1,NULL,'25.0"€\%1','left','note','2031-03-22T20:40:58.000Z',312,'2031-03-22T20:40:58.500Z',120,1,57,'other',replace('25.0ä"\n','\n',char(10)),'0.1.0');
INSERT INTO entry VALUES(59,1,NULL,'25.0','left','photo','2031-03-22T20:40:59.000Z',-579,'2031-03-22T20:40:59.500Z',120,1,NULL,NULL,'🔧=1+125.0','0.1.0');
INSERT INTO entry VALUES(60,1,NULL,'','right','photo','2031-03-22T20:41:00.000Z',312,'2031-03-22T20:41:00.500Z',120,1,59,'other','"🔧z﻿','0.1.0');
INSERT INTO entry VALUES(61,1,NULL,'25.0=1+1z﻿"','left','timer_started','2031-03-22T20:41:01.000Z',791,'2031-03-22T20:41:01.500Z',120,1,NULL,NULL,':name=1+1%1\','0.1.0');
INSERT INTO entry VALUES(62,1,NULL,replace('NULL	\n?NULL','\n',char(10)),'right','timer_started','2031-03-22T20:41:02.000Z',834,'2031-03-22T20:41:02.500Z',120,1,61,'other','\','0.1.0');
INSERT INTO entry VALUES(63,1,NULL,'é"ä25.0',NULL,'override','2031-03-22T20:41:03.000Z',724,'2031-03-22T20:41:03.500Z',120,1,NULL,NULL,'z﻿NULLé','0.1.0');
INSERT INTO entry VALUES(64,1,NULL,'0?',NULL,'override','2031-03-22T20:41:04.000Z',84,'2031-03-22T20:41:04.500Z',120,1,63,'other','?"0','0.1.0');
INSERT INTO entry VALUES(65,1,NULL,'''; DROP TABLE entry; --',NULL,'road_test','2031-03-22T20:41:05.000Z',-399,'2031-03-22T20:41:05.500Z',120,1,NULL,NULL,'🔧<b>','0.1.0');
INSERT INTO entry VALUES(66,1,NULL,'ä',NULL,'road_test','2031-03-22T20:41:06.000Z',-786,'2031-03-22T20:41:06.500Z',120,1,65,'other','','0.1.0');
INSERT INTO entry VALUES(67,1,NULL,'','right','recheck_due','2031-03-22T20:41:07.000Z',-4,'2031-03-22T20:41:07.500Z',120,1,NULL,NULL,':name''; DROP TABLE entry; --"''; DROP TABLE entry; --0','0.1.0');
INSERT INTO entry VALUES(68,1,NULL,'0NULL','left','recheck_due','2031-03-22T20:41:08.000Z',85,'2031-03-22T20:41:08.500Z',120,1,67,'other','','0.1.0');
INSERT INTO entry VALUES(69,1,NULL,':name','left','job_closed','2031-03-22T20:41:09.000Z',-326,'2031-03-22T20:41:09.500Z',120,1,NULL,NULL,'','0.1.0');
INSERT INTO entry VALUES(70,1,NULL,'','right','job_closed','2031-03-22T20:41:10.000Z',-232,'2031-03-22T20:41:10.500Z',120,1,69,'other','''; DROP TABLE entry; --','0.1.0');
INSERT INTO entry VALUES(71,1,NULL,'=1+125.0?ä',NULL,'withdrawal','2031-03-22T20:41:11.000Z',-445,'2031-03-22T20:41:11.500Z',120,1,70,'other','	:name0''; DROP TABLE entry; --','0.1.0');
INSERT INTO entry VALUES(72,1,NULL,'','left','withdrawal','2031-03-22T20:41:12.000Z',486,'2031-03-22T20:41:12.500Z',120,1,71,'other',':name:nameNULL:name','0.1.0');
INSERT INTO entry VALUES(73,NULL,NULL,'',NULL,'shop_named','2031-03-22T20:41:13.000Z',-148,'2031-03-22T20:41:13.500Z',120,1,NULL,NULL,'\0\''; DROP TABLE entry; --','0.1.0');
INSERT INTO entry VALUES(74,NULL,NULL,'🔧25.0é','left','shop_named','2031-03-22T20:41:14.000Z',-250,'2031-03-22T20:41:14.500Z',120,1,73,'other',replace('	\n	','\n',char(10)),'0.1.0');
INSERT INTO entry VALUES(75,1,NULL,'z﻿🔧é',NULL,'recheck_done','2031-03-22T20:41:15.000Z',189,'2031-03-22T20:41:15.500Z',120,1,NULL,NULL,'\25.0🔧0','0.1.0');
INSERT INTO entry VALUES(76,1,NULL,'	 🔧',NULL,'recheck_done','2031-03-22T20:41:16.000Z',-350,'2031-03-22T20:41:16.500Z',120,1,75,'other','''; DROP TABLE entry; -- ','0.1.0');
INSERT INTO entry VALUES(77,1,NULL,'','left','calculated','2031-03-22T20:41:17.000Z',454,'2031-03-22T20:41:17.500Z',120,1,NULL,NULL,'€"%1<b>','0.1.0');
INSERT INTO entry VALUES(78,1,NULL,'?',NULL,'calculated','2031-03-22T20:41:18.000Z',822,'2031-03-22T20:41:18.500Z',120,1,77,'other','NULL','0.1.0');
INSERT INTO entry VALUES(79,1,NULL,'',NULL,'shake_told','2031-03-22T20:41:19.000Z',103,'2031-03-22T20:41:19.500Z',120,1,NULL,NULL,'🔧''; DROP TABLE entry; --','0.1.0');
INSERT INTO entry VALUES(80,1,NULL,'%1',NULL,'shake_told','2031-03-22T20:41:20.000Z',-173,'2031-03-22T20:41:20.500Z',120,1,79,'other','<b><b>é','0.1.0');
INSERT INTO entry VALUES(81,1,NULL,' =1+1','right','learning_left_out','2031-03-22T20:41:21.000Z',-357,'2031-03-22T20:41:21.500Z',120,1,NULL,NULL,'	0‮\','0.1.0');
INSERT INTO entry VALUES(82,1,NULL,'äz﻿	=1+1%1',NULL,'learning_left_out','2031-03-22T20:41:22.000Z',-441,'2031-03-22T20:41:22.500Z',120,1,81,'other','NULL\\%1NULL','0.1.0');
INSERT INTO entry VALUES(83,NULL,NULL,':name?€NULL"',NULL,'cause_numbers','2031-03-22T20:41:23.000Z',206,'2031-03-22T20:41:23.500Z',120,1,NULL,NULL,'z﻿<b>ä €','0.1.0');
INSERT INTO entry VALUES(84,NULL,NULL,'',NULL,'cause_numbers','2031-03-22T20:41:24.000Z',-200,'2031-03-22T20:41:24.500Z',120,1,83,'other','	','0.1.0');
INSERT INTO entry VALUES(85,1,NULL,'%1🔧%1%1','left','cause_put_right','2031-03-22T20:41:25.000Z',349,'2031-03-22T20:41:25.500Z',120,1,NULL,NULL,'=1+1🔧','0.1.0');
INSERT INTO entry VALUES(86,1,NULL,'','left','cause_put_right','2031-03-22T20:41:26.000Z',57,'2031-03-22T20:41:26.500Z',120,1,85,'other','NULLNULL','0.1.0');
INSERT INTO entry VALUES(87,1,NULL,'=1+1 ','left','lesson','2031-03-22T20:41:27.000Z',747,'2031-03-22T20:41:27.500Z',120,1,NULL,NULL,' <b>','0.1.0');
INSERT INTO entry VALUES(88,1,NULL,'25.0NULL<b>"','left','lesson','2031-03-22T20:41:28.000Z',-152,'2031-03-22T20:41:28.500Z',120,1,87,'other','	 "%1','0.1.0');
CREATE TABLE IF NOT EXISTS "picture" (
  "hash" TEXT PRIMARY KEY CHECK (length("hash") > 0),
  "mime" TEXT NOT NULL CHECK (instr("mime", char(0)) = 0),
  "bytes" BLOB NOT NULL,
  "thumbnail" BLOB NOT NULL
) STRICT;
INSERT INTO picture VALUES('cafe','image/png',X'6279746573',X'736d616c6c');
CREATE TABLE IF NOT EXISTS "draft" (
  "place" TEXT PRIMARY KEY,
  "text" TEXT NOT NULL
) STRICT, WITHOUT ROWID;
INSERT INTO draft VALUES('job/1','18.');
CREATE TABLE IF NOT EXISTS "setting" (
  "key" TEXT PRIMARY KEY,
  "value" TEXT NOT NULL
) STRICT, WITHOUT ROWID;
INSERT INTO setting VALUES('currency','EUR');
CREATE TABLE IF NOT EXISTS "cursor" (
  "job" INTEGER PRIMARY KEY,
  "place" TEXT NOT NULL
) STRICT;
CREATE TABLE IF NOT EXISTS "fact_person" (
  "entry" INTEGER PRIMARY KEY REFERENCES "entry" ("id"),
  "person" INTEGER NOT NULL,
  "name" TEXT NOT NULL CHECK (instr("name", char(0)) = 0),
  "initials" TEXT NOT NULL CHECK (instr("initials", char(0)) = 0),
  "active" INTEGER NOT NULL CHECK ("active" IN (0, 1))
) STRICT;
INSERT INTO fact_person VALUES(1,1,'A. Mechanic','AM',1);
INSERT INTO fact_person VALUES(11,398438,'','€\',0);
INSERT INTO fact_person VALUES(12,818,'=1+1','‮":name‮ä',0);
CREATE TABLE IF NOT EXISTS "fact_instrument" (
  "entry" INTEGER PRIMARY KEY REFERENCES "entry" ("id"),
  "instrument" INTEGER NOT NULL,
  "name" TEXT NOT NULL CHECK (instr("name", char(0)) = 0),
  "type" TEXT NOT NULL CHECK ("type" IN ('spring_scale', 'micrometer', 'dial_indicator',
      'caliper', 'feeler', 'steel_rule', 'torque_wrench', 'pressure_gauge', 'other')),
  "graduation_kind" TEXT NOT NULL REFERENCES "quantity_kind" ("word"), "graduation_number" TEXT
      NOT NULL, "graduation_unit" TEXT NOT NULL,
  "graduation_si" REAL NOT NULL CHECK (abs("graduation_si") < 1e300),
  "permissible_error_kind" TEXT REFERENCES "quantity_kind" ("word"), "permissible_error_number"
      TEXT, "permissible_error_unit" TEXT,
  "permissible_error_si" REAL CHECK (abs("permissible_error_si") < 1e300),
  "error_shape" TEXT NOT NULL CHECK (instr("error_shape", char(0)) = 0),
  "coverage_factor" REAL CHECK (abs("coverage_factor") < 1e300),
  "range_min_kind" TEXT REFERENCES "quantity_kind" ("word"), "range_min_number" TEXT,
      "range_min_unit" TEXT,
  "range_min_si" REAL CHECK (abs("range_min_si") < 1e300),
  "range_max_kind" TEXT REFERENCES "quantity_kind" ("word"), "range_max_number" TEXT,
      "range_max_unit" TEXT,
  "range_max_si" REAL CHECK (abs("range_max_si") < 1e300),
  "calibrated_on" TEXT CHECK ("calibrated_on" GLOB '[0-9][0-9][0-9][0-9]-[0-9][0-9]-[0-9][0-9]'),
  "calibration_due" TEXT CHECK ("calibration_due" GLOB
      '[0-9][0-9][0-9][0-9]-[0-9][0-9]-[0-9][0-9]'),
  "certificate" TEXT NOT NULL CHECK (instr("certificate", char(0)) = 0),
  "active" INTEGER NOT NULL CHECK ("active" IN (0, 1)),
  CHECK (("permissible_error_kind" IS NULL) + ("permissible_error_number" IS NULL) +
      ("permissible_error_unit" IS NULL) + ("permissible_error_si" IS NULL) IN (0, 4)),
  CHECK (("range_min_kind" IS NULL) + ("range_min_number" IS NULL) + ("range_min_unit" IS NULL)
      + ("range_min_si" IS NULL) IN (0, 4)),
  CHECK (("range_max_kind" IS NULL) + ("range_max_number" IS NULL) + ("range_max_unit" IS NULL)
      + ("range_max_si" IS NULL) IN (0, 4))
) STRICT;
INSERT INTO fact_instrument VALUES(2,1,'scale','spring_scale','force','0.5','N',0.5,NULL,NULL,NULL,NULL,'rectangular',NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,'',1);
INSERT INTO fact_instrument VALUES(13,333259,'\<b>%1','micrometer','speed','\','ä=1+1NULL"',1.000000000000000025e-300,'torque','z﻿%10','‮é',-1.0000000000000000207e+299,'=1+1',4.4501477170144027669e-308,'unbalance',replace('?🔧\n','\n',char(10)),'',4.4501477170144027669e-308,NULL,NULL,NULL,NULL,NULL,'2019-09-23','?%1"',0);
INSERT INTO fact_instrument VALUES(14,103448,replace('00NULL\\n','\n',char(10)),'dial_indicator','angle','25.0:name','0‮‮é',0.0,'unbalance','=1+1',' :name''; DROP TABLE entry; --	ä',0.33333333333333331482,'',-0.10000000000000000555,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,'2006-08-18','2028-01-25','€z﻿\	',0);
CREATE TABLE IF NOT EXISTS "fact_instrument_check" (
  "entry" INTEGER PRIMARY KEY REFERENCES "entry" ("id"),
  "instrument" INTEGER NOT NULL,
  "against" TEXT NOT NULL CHECK (instr("against", char(0)) = 0),
  "applied_kind" TEXT NOT NULL REFERENCES "quantity_kind" ("word"), "applied_number" TEXT NOT
      NULL, "applied_unit" TEXT NOT NULL,
  "applied_si" REAL NOT NULL CHECK (abs("applied_si") < 1e300),
  "shown_kind" TEXT NOT NULL REFERENCES "quantity_kind" ("word"), "shown_number" TEXT NOT NULL,
      "shown_unit" TEXT NOT NULL,
  "shown_si" REAL NOT NULL CHECK (abs("shown_si") < 1e300),
  "applied_uncertainty_kind" TEXT REFERENCES "quantity_kind" ("word"),
      "applied_uncertainty_number" TEXT, "applied_uncertainty_unit" TEXT,
  "applied_uncertainty_si" REAL CHECK (abs("applied_uncertainty_si") < 1e300),
  CHECK (("applied_uncertainty_kind" IS NULL) + ("applied_uncertainty_number" IS NULL) +
      ("applied_uncertainty_unit" IS NULL) + ("applied_uncertainty_si" IS NULL) IN (0, 4))
) STRICT;
INSERT INTO fact_instrument_check VALUES(10,210830,'','speed',':name\:nameNULL','NULL',0.10000000000000000555,'temperature_difference','	‮25.0é','',-0.10000000000000000555,'number','''; DROP TABLE entry; --é','0''; DROP TABLE entry; --"NULL',-0.10000000000000000555);
INSERT INTO fact_instrument_check VALUES(15,196038,'\\"','length','','"\\',0.10000000000000000555,'area','?%1',replace('\n','\n',char(10)),18.5,'pressure',replace('\n%1=1+1','\n',char(10)),'',0.10000000000000000555);
INSERT INTO fact_instrument_check VALUES(16,707300,'0','stiffness','=1+1:name‮é','''; DROP TABLE entry; --ä',1.000000000000000025e-300,'temperature_difference','','0=1+1',-1.0000000000000000207e+299,'pressure','éé\NULL‮','',4.4501477170144027669e-308);
CREATE TABLE IF NOT EXISTS "fact_vehicle" (
  "entry" INTEGER PRIMARY KEY REFERENCES "entry" ("id"),
  "vehicle" INTEGER NOT NULL,
  "registration" TEXT NOT NULL CHECK (instr("registration", char(0)) = 0),
  "make_model" TEXT NOT NULL CHECK (instr("make_model", char(0)) = 0),
  "vin" TEXT NOT NULL CHECK (instr("vin", char(0)) = 0),
  "owner" TEXT NOT NULL CHECK (instr("owner", char(0)) = 0),
  "odometer_unit" TEXT NOT NULL CHECK (instr("odometer_unit", char(0)) = 0),
  "tyre_fitted" TEXT NOT NULL CHECK (instr("tyre_fitted", char(0)) = 0),
  "tyre_original" TEXT NOT NULL CHECK (instr("tyre_original", char(0)) = 0),
  "hand_of_drive" TEXT CHECK ("hand_of_drive" IN ('left', 'right')),
  "traffic_side" TEXT CHECK ("traffic_side" IN ('left', 'right')),
  "front_axle_load_kind" TEXT REFERENCES "quantity_kind" ("word"), "front_axle_load_number"
      TEXT, "front_axle_load_unit" TEXT,
  "front_axle_load_si" REAL CHECK (abs("front_axle_load_si") < 1e300),
  "drag_link_side" TEXT CHECK ("drag_link_side" IN ('left', 'right')),
  "steering_arm_on_cap" TEXT CHECK ("steering_arm_on_cap" IN ('yes', 'no', 'unknown')),
  "lubricant" TEXT CHECK ("lubricant" IN ('grease', 'oil')),
  "shim_ends" TEXT CHECK ("shim_ends" IN ('top', 'bottom', 'both')),
  "shim_layout" TEXT CHECK ("shim_layout" IN ('cap_flange', 'inner')),
  "swivel_bearing" TEXT CHECK ("swivel_bearing" IN ('taper', 'bush', 'sprung_pin')),
  "drag_link_fixes_to" TEXT CHECK ("drag_link_fixes_to" IN ('track_rod', 'drag_link',
      'steering_arm', 'axle', 'frame')),
  "damper_fixes_to" TEXT CHECK ("damper_fixes_to" IN ('track_rod', 'drag_link', 'steering_arm',
      'axle', 'frame')),
  "disc_mount" TEXT CHECK ("disc_mount" IN ('outside', 'behind_hub')),
  "wheel_bearing" TEXT CHECK ("wheel_bearing" IN ('end_float', 'preload', 'unit')),
  "abs_lead" TEXT CHECK ("abs_lead" IN ('yes', 'no', 'unknown')),
  "locking_hubs" TEXT CHECK ("locking_hubs" IN ('yes', 'no', 'unknown')),
  "notes" TEXT NOT NULL CHECK (instr("notes", char(0)) = 0),
  CHECK (("front_axle_load_kind" IS NULL) + ("front_axle_load_number" IS NULL) +
      ("front_axle_load_unit" IS NULL) + ("front_axle_load_si" IS NULL) IN (0, 4))
) STRICT;
INSERT INTO fact_vehicle VALUES(3,1,'AB 123','','','','km','','',NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,'');
INSERT INTO fact_vehicle VALUES(17,531098,'','NULL%1','?','  éz﻿','🔧z﻿é','ä',replace(' \n \','\n',char(10)),'left','right','force','<b>?','0=1+1',1.000000000000000025e-300,'left','no',NULL,NULL,NULL,'sprung_pin','axle',NULL,'behind_hub',NULL,'unknown','unknown',replace('25.0?"\n🔧','\n',char(10)));
INSERT INTO fact_vehicle VALUES(18,704655,'	=1+1','‮"=1+1','','🔧25.0=1+1','0	%1','0:name<b>🔧','<b>','left','right','length','éz﻿','€',-0.10000000000000000555,'right','unknown','grease',NULL,'inner','bush','steering_arm','frame',NULL,'preload','unknown',NULL,' 0''; DROP TABLE entry; --🔧');
CREATE TABLE IF NOT EXISTS "fact_spec_item" (
  "entry" INTEGER PRIMARY KEY REFERENCES "entry" ("id"),
  "vehicle" INTEGER NOT NULL,
  "key" TEXT NOT NULL CHECK (instr("key", char(0)) = 0),
  "type" TEXT NOT NULL CHECK ("type" IN ('limit', 'torque', 'value', 'text')),
  "min_kind" TEXT REFERENCES "quantity_kind" ("word"), "min_number" TEXT, "min_unit" TEXT,
  "min_si" REAL CHECK (abs("min_si") < 1e300),
  "max_kind" TEXT REFERENCES "quantity_kind" ("word"), "max_number" TEXT, "max_unit" TEXT,
  "max_si" REAL CHECK (abs("max_si") < 1e300),
  "value_kind" TEXT REFERENCES "quantity_kind" ("word"), "value_number" TEXT, "value_unit" TEXT,
  "value_si" REAL CHECK (abs("value_si") < 1e300),
  "second_min_kind" TEXT REFERENCES "quantity_kind" ("word"), "second_min_number" TEXT,
      "second_min_unit" TEXT,
  "second_min_si" REAL CHECK (abs("second_min_si") < 1e300),
  "second_max_kind" TEXT REFERENCES "quantity_kind" ("word"), "second_max_number" TEXT,
      "second_max_unit" TEXT,
  "second_max_si" REAL CHECK (abs("second_max_si") < 1e300),
  "second_value_kind" TEXT REFERENCES "quantity_kind" ("word"), "second_value_number" TEXT,
      "second_value_unit" TEXT,
  "second_value_si" REAL CHECK (abs("second_value_si") < 1e300),
  "text" TEXT NOT NULL CHECK (instr("text", char(0)) = 0),
  "state_seal" TEXT CHECK ("state_seal" IN ('off', 'on')),
  "state_rods" TEXT CHECK ("state_rods" IN ('off', 'on')),
  "state_damper" TEXT CHECK ("state_damper" IN ('off', 'on')),
  "state_sealant" TEXT CHECK ("state_sealant" IN ('none', 'wet', 'cured')),
  "state_grease" TEXT CHECK ("state_grease" IN ('dry', 'fresh', 'old')),
  "state_movement" TEXT CHECK ("state_movement" IN ('first', 'steady')),
  "state_position" TEXT CHECK ("state_position" IN ('ahead', 'left_15', 'right_15')),
  "fastener_size" TEXT NOT NULL CHECK (instr("fastener_size", char(0)) = 0),
  "fastener_class" TEXT NOT NULL CHECK (instr("fastener_class", char(0)) = 0),
  "count" INTEGER,
  "pattern" TEXT NOT NULL CHECK (instr("pattern", char(0)) = 0),
  "single_use" INTEGER NOT NULL CHECK ("single_use" IN (0, 1)),
  "source" TEXT NOT NULL CHECK (instr("source", char(0)) = 0),
  "source_date" TEXT CHECK ("source_date" GLOB '[0-9][0-9][0-9][0-9]-[0-9][0-9]-[0-9][0-9]'),
  "withdrawn" INTEGER NOT NULL CHECK ("withdrawn" IN (0, 1)),
  CHECK (("min_kind" IS NULL) + ("min_number" IS NULL) + ("min_unit" IS NULL) + ("min_si" IS
      NULL) IN (0, 4)),
  CHECK (("max_kind" IS NULL) + ("max_number" IS NULL) + ("max_unit" IS NULL) + ("max_si" IS
      NULL) IN (0, 4)),
  CHECK (("value_kind" IS NULL) + ("value_number" IS NULL) + ("value_unit" IS NULL) +
      ("value_si" IS NULL) IN (0, 4)),
  CHECK (("second_min_kind" IS NULL) + ("second_min_number" IS NULL) + ("second_min_unit" IS
      NULL) + ("second_min_si" IS NULL) IN (0, 4)),
  CHECK (("second_max_kind" IS NULL) + ("second_max_number" IS NULL) + ("second_max_unit" IS
      NULL) + ("second_max_si" IS NULL) IN (0, 4)),
  CHECK (("second_value_kind" IS NULL) + ("second_value_number" IS NULL) + ("second_value_unit"
      IS NULL) + ("second_value_si" IS NULL) IN (0, 4))
) STRICT;
INSERT INTO fact_spec_item VALUES(9,795609,'🔧','limit','speed',replace(':name \n','\n',char(10)),':name"z﻿ ',1.000000000000000025e-300,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,'force','‮\<b>:name','25.0 0',0.33333333333333331482,NULL,NULL,NULL,NULL,replace('ä:name\n','\n',char(10)),NULL,NULL,NULL,NULL,NULL,NULL,NULL,'','€',NULL,'0%1''; DROP TABLE entry; --',0,'	',NULL,0);
INSERT INTO fact_spec_item VALUES(19,607776,'0äé','limit',NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,'length','"0<b>','''; DROP TABLE entry; --=1+1<b>z﻿ ',0.33333333333333331482,'pressure','é <b>''; DROP TABLE entry; --"','=1+1',-0.10000000000000000555,'0=1+1€',NULL,NULL,NULL,NULL,NULL,NULL,NULL,'		🔧	','‮?',7910319510231200318,'',1,'''; DROP TABLE entry; --',NULL,1);
INSERT INTO fact_spec_item VALUES(20,562372,'25.0z﻿?','text','volume','NULL?','‮',0.10000000000000000555,NULL,NULL,NULL,NULL,'force','🔧"',replace('=1+1\n','\n',char(10)),-0.10000000000000000555,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,'','on','on','off','cured','old','steady','ahead','','ä',8910570393811040743,replace('\n','\n',char(10)),0,'z﻿0%1é',NULL,1);
CREATE TABLE IF NOT EXISTS "fact_procedure_text" (
  "entry" INTEGER PRIMARY KEY REFERENCES "entry" ("id"),
  "hash" TEXT NOT NULL CHECK (instr("hash", char(0)) = 0),
  "procedure" TEXT NOT NULL CHECK (instr("procedure", char(0)) = 0),
  "version" INTEGER NOT NULL,
  "text" TEXT NOT NULL CHECK (instr("text", char(0)) = 0)
) STRICT;
INSERT INTO fact_procedure_text VALUES(4,'h1','as_found',1,'{}');
INSERT INTO fact_procedure_text VALUES(21,replace('\n','\n',char(10)),'‮',8206339594556185037,'');
INSERT INTO fact_procedure_text VALUES(22,'\','🔧?=1+1€',4051472457175127110,'''; DROP TABLE entry; --''; DROP TABLE entry; --');
CREATE TABLE IF NOT EXISTS "fact_job_opened" (
  "entry" INTEGER PRIMARY KEY REFERENCES "entry" ("id"),
  "vehicle" INTEGER NOT NULL,
  "odometer_kind" TEXT REFERENCES "quantity_kind" ("word"), "odometer_number" TEXT,
      "odometer_unit" TEXT,
  "odometer_si" REAL CHECK (abs("odometer_si") < 1e300),
  "request" TEXT NOT NULL CHECK (instr("request", char(0)) = 0),
  CHECK (("odometer_kind" IS NULL) + ("odometer_number" IS NULL) + ("odometer_unit" IS NULL) +
      ("odometer_si" IS NULL) IN (0, 4))
) STRICT;
INSERT INTO fact_job_opened VALUES(5,1,NULL,NULL,NULL,NULL,'shakes');
INSERT INTO fact_job_opened VALUES(23,400103,'speed','''; DROP TABLE entry; --25.025.0','',-0.10000000000000000555,' ?');
INSERT INTO fact_job_opened VALUES(24,637358,NULL,NULL,NULL,NULL,'‮');
CREATE TABLE IF NOT EXISTS "fact_complaint" (
  "entry" INTEGER PRIMARY KEY REFERENCES "entry" ("id"),
  "words" TEXT NOT NULL CHECK (instr("words", char(0)) = 0),
  "onset_rising_kind" TEXT REFERENCES "quantity_kind" ("word"), "onset_rising_number" TEXT,
      "onset_rising_unit" TEXT,
  "onset_rising_si" REAL CHECK (abs("onset_rising_si") < 1e300),
  "release_rising_kind" TEXT REFERENCES "quantity_kind" ("word"), "release_rising_number" TEXT,
      "release_rising_unit" TEXT,
  "release_rising_si" REAL CHECK (abs("release_rising_si") < 1e300),
  "onset_falling_kind" TEXT REFERENCES "quantity_kind" ("word"), "onset_falling_number" TEXT,
      "onset_falling_unit" TEXT,
  "onset_falling_si" REAL CHECK (abs("onset_falling_si") < 1e300),
  "release_falling_kind" TEXT REFERENCES "quantity_kind" ("word"), "release_falling_number"
      TEXT, "release_falling_unit" TEXT,
  "release_falling_si" REAL CHECK (abs("release_falling_si") < 1e300),
  "speed_source" TEXT CHECK ("speed_source" IN ('dial', 'gps')),
  "braking" TEXT NOT NULL CHECK ("braking" IN ('only', 'also', 'starts_and_stays', 'no',
      'unknown')),
  "after_bump" TEXT NOT NULL CHECK ("after_bump" IN ('yes', 'no', 'unknown')),
  "speed_band" TEXT NOT NULL CHECK ("speed_band" IN ('yes', 'no', 'unknown')),
  "where_felt" TEXT NOT NULL CHECK (instr("where_felt", char(0)) = 0),
  "recent_work" TEXT NOT NULL CHECK (instr("recent_work", char(0)) = 0),
  "conditions" TEXT NOT NULL CHECK (instr("conditions", char(0)) = 0),
  CHECK (("onset_rising_kind" IS NULL) + ("onset_rising_number" IS NULL) + ("onset_rising_unit"
      IS NULL) + ("onset_rising_si" IS NULL) IN (0, 4)),
  CHECK (("release_rising_kind" IS NULL) + ("release_rising_number" IS NULL) +
      ("release_rising_unit" IS NULL) + ("release_rising_si" IS NULL) IN (0, 4)),
  CHECK (("onset_falling_kind" IS NULL) + ("onset_falling_number" IS NULL) +
      ("onset_falling_unit" IS NULL) + ("onset_falling_si" IS NULL) IN (0, 4)),
  CHECK (("release_falling_kind" IS NULL) + ("release_falling_number" IS NULL) +
      ("release_falling_unit" IS NULL) + ("release_falling_si" IS NULL) IN (0, 4))
) STRICT;
INSERT INTO fact_complaint VALUES(25,'?🔧',NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,'frequency','€‮',replace('\n:name‮\n','\n',char(10)),-1.0000000000000000207e+299,'dial','also','no','no',replace('\n	ä‮','\n',char(10)),'€z﻿NULLNULL','	0');
INSERT INTO fact_complaint VALUES(26,'NULL','torque',replace(':name\n\','\n',char(10)),'	',1.000000000000000025e-300,NULL,NULL,NULL,NULL,'unbalance','','€ä',-0.10000000000000000555,'duration','NULLz﻿"\','%1€\',0.0,'dial','only','no','no','\🔧','=1+125.0','\z﻿');
CREATE TABLE IF NOT EXISTS "fact_cause_checked" (
  "entry" INTEGER PRIMARY KEY REFERENCES "entry" ("id"),
  "cause" TEXT NOT NULL CHECK (instr("cause", char(0)) = 0),
  "excluded" INTEGER NOT NULL CHECK ("excluded" IN (0, 1)),
  "how" TEXT NOT NULL CHECK (instr("how", char(0)) = 0)
) STRICT;
INSERT INTO fact_cause_checked VALUES(27,'',0,'"<b>NULL');
INSERT INTO fact_cause_checked VALUES(28,'?',1,'<b>');
CREATE TABLE IF NOT EXISTS "fact_run_started" (
  "entry" INTEGER PRIMARY KEY REFERENCES "entry" ("id"),
  "procedure" TEXT NOT NULL CHECK (instr("procedure", char(0)) = 0),
  "hash" TEXT NOT NULL CHECK (instr("hash", char(0)) = 0),
  "left" INTEGER NOT NULL CHECK ("left" IN (0, 1)),
  "right" INTEGER NOT NULL CHECK ("right" IN (0, 1)),
  "round" INTEGER NOT NULL,
  "why" TEXT NOT NULL CHECK (instr("why", char(0)) = 0),
  "placed_after" INTEGER REFERENCES "entry" ("id")
) STRICT;
INSERT INTO fact_run_started VALUES(6,'as_found','h1',0,0,1,'',NULL);
INSERT INTO fact_run_started VALUES(29,'	%1€','h1',1,1,7141068221917317736,'":name',2);
INSERT INTO fact_run_started VALUES(30,'','h1',1,0,5547521851266532821,' ?	00',NULL);
CREATE TABLE IF NOT EXISTS "fact_support_chosen" (
  "entry" INTEGER PRIMARY KEY REFERENCES "entry" ("id"),
  "support" TEXT NOT NULL CHECK ("support" IN ('stands', 'two_post', 'four_post', 'pit'))
) STRICT;
INSERT INTO fact_support_chosen VALUES(31,'two_post');
INSERT INTO fact_support_chosen VALUES(32,'pit');
CREATE TABLE IF NOT EXISTS "fact_hold_answer" (
  "entry" INTEGER PRIMARY KEY REFERENCES "entry" ("id"),
  "hold" TEXT NOT NULL CHECK (instr("hold", char(0)) = 0),
  "statement" TEXT NOT NULL CHECK (instr("statement", char(0)) = 0),
  "answer" TEXT NOT NULL CHECK (instr("answer", char(0)) = 0),
  "si" REAL CHECK (abs("si") < 1e300),
  "passes" INTEGER NOT NULL CHECK ("passes" IN (0, 1))
) STRICT;
INSERT INTO fact_hold_answer VALUES(33,'?''; DROP TABLE entry; --<b>','NULL<b>%1','',NULL,0);
INSERT INTO fact_hold_answer VALUES(34,' =1+1"','	€z﻿','<b>=1+1🔧',NULL,0);
CREATE TABLE IF NOT EXISTS "fact_step_mark" (
  "entry" INTEGER PRIMARY KEY REFERENCES "entry" ("id"),
  "action" TEXT NOT NULL CHECK ("action" IN ('done', 'done_before_recording', 'not_applicable',
      'reopened')),
  "text" TEXT NOT NULL CHECK (instr("text", char(0)) = 0)
) STRICT;
INSERT INTO fact_step_mark VALUES(35,'done','\	é25.0');
INSERT INTO fact_step_mark VALUES(36,'not_applicable','');
CREATE TABLE IF NOT EXISTS "fact_observation" (
  "entry" INTEGER PRIMARY KEY REFERENCES "entry" ("id"),
  "key" TEXT NOT NULL CHECK (instr("key", char(0)) = 0),
  "value" TEXT NOT NULL CHECK (instr("value", char(0)) = 0),
  "text" TEXT NOT NULL CHECK (instr("text", char(0)) = 0)
) STRICT;
INSERT INTO fact_observation VALUES(37,'é?25.0','0NULL','');
INSERT INTO fact_observation VALUES(38,'€%1','=1+1🔧 <b>','<b>é');
CREATE TABLE IF NOT EXISTS "fact_series" (
  "entry" INTEGER PRIMARY KEY REFERENCES "entry" ("id"),
  "quantity" TEXT NOT NULL REFERENCES "quantity_kind" ("word"),
  "limit_key" TEXT NOT NULL CHECK (instr("limit_key", char(0)) = 0),
  "limit" INTEGER REFERENCES "entry" ("id"),
  "instrument" INTEGER NOT NULL REFERENCES "entry" ("id"),
  "instrument_check" INTEGER REFERENCES "entry" ("id"),
  "state_seal" TEXT CHECK ("state_seal" IN ('off', 'on')),
  "state_rods" TEXT CHECK ("state_rods" IN ('off', 'on')),
  "state_damper" TEXT CHECK ("state_damper" IN ('off', 'on')),
  "state_sealant" TEXT CHECK ("state_sealant" IN ('none', 'wet', 'cured')),
  "state_grease" TEXT CHECK ("state_grease" IN ('dry', 'fresh', 'old')),
  "state_movement" TEXT CHECK ("state_movement" IN ('first', 'steady')),
  "state_position" TEXT CHECK ("state_position" IN ('ahead', 'left_15', 'right_15')),
  "angle_within_kind" TEXT REFERENCES "quantity_kind" ("word"), "angle_within_number" TEXT,
      "angle_within_unit" TEXT,
  "angle_within_si" REAL CHECK (abs("angle_within_si") < 1e300),
  "arm_kind" TEXT REFERENCES "quantity_kind" ("word"), "arm_number" TEXT, "arm_unit" TEXT,
  "arm_si" REAL CHECK (abs("arm_si") < 1e300),
  "planned" INTEGER NOT NULL,
  "settling" INTEGER NOT NULL,
  "safety" INTEGER NOT NULL CHECK ("safety" IN (0, 1)),
  CHECK (("angle_within_kind" IS NULL) + ("angle_within_number" IS NULL) + ("angle_within_unit"
      IS NULL) + ("angle_within_si" IS NULL) IN (0, 4)),
  CHECK (("arm_kind" IS NULL) + ("arm_number" IS NULL) + ("arm_unit" IS NULL) + ("arm_si" IS
      NULL) IN (0, 4))
) STRICT;
INSERT INTO fact_series VALUES(7,'force','',NULL,2,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,3,0,0);
INSERT INTO fact_series VALUES(39,'frequency','',9,2,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,'area','','‮',0.10000000000000000555,4130397939049431288,9179582027353463998,1);
INSERT INTO fact_series VALUES(40,'stiffness','<b>',NULL,2,10,NULL,NULL,NULL,NULL,NULL,NULL,NULL,'duration',replace('=1+1"\n€ ','\n',char(10)),'%1z﻿NULLä''; DROP TABLE entry; --',0.10000000000000000555,NULL,NULL,NULL,NULL,8514144385036664782,797251329783321807,0);
CREATE TABLE IF NOT EXISTS "fact_reading" (
  "entry" INTEGER PRIMARY KEY REFERENCES "entry" ("id"),
  "series" INTEGER NOT NULL REFERENCES "entry" ("id"),
  "value_kind" TEXT NOT NULL REFERENCES "quantity_kind" ("word"), "value_number" TEXT NOT NULL,
      "value_unit" TEXT NOT NULL,
  "value_si" REAL NOT NULL CHECK (abs("value_si") < 1e300),
  "use" TEXT NOT NULL CHECK ("use" IN ('used', 'settling', 'not_used'))
) STRICT;
INSERT INTO fact_reading VALUES(8,7,'force','18.500000','N',18.5,'used');
INSERT INTO fact_reading VALUES(41,7,'frequency','ä?"','',-0.10000000000000000555,'used');
INSERT INTO fact_reading VALUES(42,7,'pressure','é:name','€''; DROP TABLE entry; --',-0.10000000000000000555,'settling');
CREATE TABLE IF NOT EXISTS "fact_verdict" (
  "entry" INTEGER PRIMARY KEY REFERENCES "entry" ("id"),
  "series" INTEGER NOT NULL REFERENCES "entry" ("id"),
  "verdict" TEXT NOT NULL CHECK (instr("verdict", char(0)) = 0),
  "so_far" TEXT NOT NULL CHECK (instr("so_far", char(0)) = 0),
  "value" REAL NOT NULL CHECK (abs("value") < 1e300),
  "standard_uncertainty" REAL NOT NULL CHECK (abs("standard_uncertainty") < 1e300),
  "degrees_of_freedom" REAL CHECK (abs("degrees_of_freedom") < 1e300),
  "expanded_uncertainty" REAL NOT NULL CHECK (abs("expanded_uncertainty") < 1e300),
  "probability" REAL CHECK (abs("probability") < 1e300),
  "bar" REAL NOT NULL CHECK (abs("bar") < 1e300),
  "used" INTEGER NOT NULL,
  "rule" TEXT NOT NULL CHECK (instr("rule", char(0)) = 0),
  "limit_side" TEXT NOT NULL CHECK (instr("limit_side", char(0)) = 0),
  "consistency" TEXT NOT NULL CHECK (instr("consistency", char(0)) = 0)
) STRICT;
INSERT INTO fact_verdict VALUES(43,7,'<b>NULL🔧','<b>0🔧€',-1.0000000000000000207e+299,-0.10000000000000000555,NULL,-1.0000000000000000207e+299,NULL,18.5,7274348222443485082,'','','25.0:name=1+1?é');
INSERT INTO fact_verdict VALUES(44,7,'€''; DROP TABLE entry; --€','<b>🔧ä%1',0.0,0.10000000000000000555,NULL,-0.10000000000000000555,NULL,0.33333333333333331482,8077944938439709545,'"‮=1+1€0',replace(':name\n','\n',char(10)),'‮"');
CREATE TABLE IF NOT EXISTS "fact_torque_check" (
  "entry" INTEGER PRIMARY KEY REFERENCES "entry" ("id"),
  "group" TEXT NOT NULL CHECK (instr("group", char(0)) = 0),
  "spec" INTEGER REFERENCES "entry" ("id"),
  "set_kind" TEXT NOT NULL REFERENCES "quantity_kind" ("word"), "set_number" TEXT NOT NULL,
      "set_unit" TEXT NOT NULL,
  "set_si" REAL NOT NULL CHECK (abs("set_si") < 1e300),
  "wrench" INTEGER NOT NULL REFERENCES "entry" ("id"),
  "stage" INTEGER NOT NULL,
  "stages" INTEGER NOT NULL,
  "done" INTEGER NOT NULL,
  "count" INTEGER NOT NULL,
  "pattern" TEXT NOT NULL CHECK (instr("pattern", char(0)) = 0),
  "wrench_in_range" INTEGER NOT NULL CHECK ("wrench_in_range" IN (0, 1)),
  "calibration" TEXT NOT NULL CHECK (instr("calibration", char(0)) = 0)
) STRICT;
INSERT INTO fact_torque_check VALUES(45,':name%1‮',NULL,'number','','é=1+1',4.4501477170144027669e-308,2,3572890973414469226,1461119435169286990,5513046715957561674,8143314547708494915,'NULL €ä',0,'NULLNULL');
INSERT INTO fact_torque_check VALUES(46,'🔧?€',9,'temperature_difference',replace('€\n\25.0%1','\n',char(10)),'z﻿',1.000000000000000025e-300,2,5982713649472485818,2444141837718377305,4428310991784294115,6335001240015143596,'0',1,':name');
CREATE TABLE IF NOT EXISTS "fact_ledger_move" (
  "entry" INTEGER PRIMARY KEY REFERENCES "entry" ("id"),
  "item" TEXT NOT NULL CHECK (instr("item", char(0)) = 0),
  "name" TEXT NOT NULL CHECK (instr("name", char(0)) = 0),
  "type" TEXT NOT NULL CHECK ("type" IN ('removed', 'put_on')),
  "state" TEXT NOT NULL CHECK ("state" IN ('off', 'hand_tight', 'torqued', 'back', 'replaced',
      'left_off', 'on', 'taken_off')),
  "fastened" INTEGER NOT NULL CHECK ("fastened" IN (0, 1)),
  "done" INTEGER,
  "count" INTEGER,
  "reason" TEXT NOT NULL CHECK (instr("reason", char(0)) = 0)
) STRICT;
INSERT INTO fact_ledger_move VALUES(47,'0''; DROP TABLE entry; --25.0<b>','','put_on','off',1,NULL,NULL,'🔧');
INSERT INTO fact_ledger_move VALUES(48,'🔧€🔧','%1=1+1','removed','on',1,NULL,NULL,'"z﻿NULLä');
CREATE TABLE IF NOT EXISTS "fact_part_used" (
  "entry" INTEGER PRIMARY KEY REFERENCES "entry" ("id"),
  "name" TEXT NOT NULL CHECK (instr("name", char(0)) = 0),
  "key" TEXT NOT NULL CHECK (instr("key", char(0)) = 0),
  "number" TEXT NOT NULL CHECK (instr("number", char(0)) = 0),
  "quantity_kind" TEXT NOT NULL REFERENCES "quantity_kind" ("word"), "quantity_number" TEXT NOT
      NULL, "quantity_unit" TEXT NOT NULL,
  "quantity_si" REAL NOT NULL CHECK (abs("quantity_si") < 1e300),
  "unit_price_minor" INTEGER,
  "currency" TEXT NOT NULL CHECK (instr("currency", char(0)) = 0),
  "consumable" INTEGER NOT NULL CHECK ("consumable" IN (0, 1))
) STRICT;
INSERT INTO fact_part_used VALUES(49,'','\=1+1z﻿''; DROP TABLE entry; --',' ','duration',':name<b>25.0🔧"','€ %1''; DROP TABLE entry; --',0.33333333333333331482,8125284262224005526,'',0);
INSERT INTO fact_part_used VALUES(50,'?z﻿','NULL',' NULL"','mass','','25.0',0.33333333333333331482,4206004162467286900,'',0);
CREATE TABLE IF NOT EXISTS "fact_shim_pack" (
  "entry" INTEGER PRIMARY KEY REFERENCES "entry" ("id"),
  "role" TEXT NOT NULL CHECK ("role" IN ('found', 'fitted')),
  "place" TEXT NOT NULL CHECK ("place" IN ('top', 'bottom')),
  "shims" TEXT NOT NULL CHECK (instr("shims", char(0)) = 0),
  "count" INTEGER NOT NULL,
  "total_kind" TEXT NOT NULL REFERENCES "quantity_kind" ("word"), "total_number" TEXT NOT NULL,
      "total_unit" TEXT NOT NULL,
  "total_si" REAL NOT NULL CHECK (abs("total_si") < 1e300),
  "measured_kind" TEXT REFERENCES "quantity_kind" ("word"), "measured_number" TEXT,
      "measured_unit" TEXT,
  "measured_si" REAL CHECK (abs("measured_si") < 1e300),
  "instrument" INTEGER REFERENCES "entry" ("id"),
  CHECK (("measured_kind" IS NULL) + ("measured_number" IS NULL) + ("measured_unit" IS NULL) +
      ("measured_si" IS NULL) IN (0, 4))
) STRICT;
INSERT INTO fact_shim_pack VALUES(51,'found','top','?',3739070689346486213,'volume','€🔧','	0',4.4501477170144027669e-308,'speed',replace('\n?ä\n','\n',char(10)),' 🔧',-0.10000000000000000555,2);
INSERT INTO fact_shim_pack VALUES(52,'fitted','top',':name	0',1338683912531754747,'area','‮:name NULL','',0.33333333333333331482,'area','','%1🔧',-1.0000000000000000207e+299,2);
CREATE TABLE IF NOT EXISTS "fact_labour" (
  "entry" INTEGER PRIMARY KEY REFERENCES "entry" ("id"),
  "minutes" REAL NOT NULL CHECK (abs("minutes") < 1e300),
  "text" TEXT NOT NULL CHECK (instr("text", char(0)) = 0),
  "hourly_rate_minor" INTEGER,
  "currency" TEXT NOT NULL CHECK (instr("currency", char(0)) = 0)
) STRICT;
INSERT INTO fact_labour VALUES(53,0.0,'"',2081716642068332364,'<b>?	');
INSERT INTO fact_labour VALUES(54,1.000000000000000025e-300,'''; DROP TABLE entry; --=1+1z﻿‮=1+1',947739605011732731,'25.0🔧');
CREATE TABLE IF NOT EXISTS "fact_work_declined" (
  "entry" INTEGER PRIMARY KEY REFERENCES "entry" ("id"),
  "what" TEXT NOT NULL CHECK (instr("what", char(0)) = 0),
  "words" TEXT NOT NULL CHECK (instr("words", char(0)) = 0)
) STRICT;
INSERT INTO fact_work_declined VALUES(55,'0€€','"<b>');
INSERT INTO fact_work_declined VALUES(56,'','=1+1');
CREATE TABLE IF NOT EXISTS "fact_note" (
  "entry" INTEGER PRIMARY KEY REFERENCES "entry" ("id"),
  "text" TEXT NOT NULL CHECK (instr("text", char(0)) = 0)
) STRICT;
INSERT INTO fact_note VALUES(57,'');
INSERT INTO fact_note VALUES(58,replace('‮ \n?','\n',char(10)));
CREATE TABLE IF NOT EXISTS "fact_photo" (
  "entry" INTEGER PRIMARY KEY REFERENCES "entry" ("id"),
  "hash" TEXT NOT NULL CHECK (instr("hash", char(0)) = 0),
  "file_name" TEXT NOT NULL CHECK (instr("file_name", char(0)) = 0),
  "mime" TEXT NOT NULL CHECK (instr("mime", char(0)) = 0),
  "width" INTEGER NOT NULL,
  "height" INTEGER NOT NULL,
  "caption" TEXT NOT NULL CHECK (instr("caption", char(0)) = 0)
) STRICT;
INSERT INTO fact_photo VALUES(59,'cafe',':name"','',3520966936726279102,5121471943477888015,'=1+1é	''; DROP TABLE entry; --');
INSERT INTO fact_photo VALUES(60,'cafe','0:name=1+1%1','',727648376666198628,391274032440338951,'');
CREATE TABLE IF NOT EXISTS "fact_timer_started" (
  "entry" INTEGER PRIMARY KEY REFERENCES "entry" ("id"),
  "minutes" REAL NOT NULL CHECK (abs("minutes") < 1e300),
  "what" TEXT NOT NULL CHECK (instr("what", char(0)) = 0)
) STRICT;
INSERT INTO fact_timer_started VALUES(61,4.4501477170144027669e-308,'z﻿?	:name');
INSERT INTO fact_timer_started VALUES(62,0.10000000000000000555,replace('\n','\n',char(10)));
CREATE TABLE IF NOT EXISTS "fact_override" (
  "entry" INTEGER PRIMARY KEY REFERENCES "entry" ("id"),
  "rule" TEXT NOT NULL CHECK (instr("rule", char(0)) = 0),
  "what" TEXT NOT NULL CHECK (instr("what", char(0)) = 0),
  "why" TEXT NOT NULL CHECK (instr("why", char(0)) = 0)
) STRICT;
INSERT INTO fact_override VALUES(63,'','"0🔧','	''; DROP TABLE entry; --🔧=1+1');
INSERT INTO fact_override VALUES(64,replace('\nNULLz﻿','\n',char(10)),'NULL"NULL"','');
CREATE TABLE IF NOT EXISTS "fact_road_test" (
  "entry" INTEGER PRIMARY KEY REFERENCES "entry" ("id"),
  "when" TEXT NOT NULL CHECK ("when" IN ('before', 'after')),
  "shake" TEXT NOT NULL CHECK ("shake" IN ('none', 'less', 'same', 'worse')),
  "onset_kind" TEXT REFERENCES "quantity_kind" ("word"), "onset_number" TEXT, "onset_unit" TEXT,
  "onset_si" REAL CHECK (abs("onset_si") < 1e300),
  "release_kind" TEXT REFERENCES "quantity_kind" ("word"), "release_number" TEXT,
      "release_unit" TEXT,
  "release_si" REAL CHECK (abs("release_si") < 1e300),
  "speed_source" TEXT CHECK ("speed_source" IN ('dial', 'gps')),
  "self_return" TEXT NOT NULL CHECK (instr("self_return", char(0)) = 0),
  "text" TEXT NOT NULL CHECK (instr("text", char(0)) = 0),
  CHECK (("onset_kind" IS NULL) + ("onset_number" IS NULL) + ("onset_unit" IS NULL) +
      ("onset_si" IS NULL) IN (0, 4)),
  CHECK (("release_kind" IS NULL) + ("release_number" IS NULL) + ("release_unit" IS NULL) +
      ("release_si" IS NULL) IN (0, 4))
) STRICT;
INSERT INTO fact_road_test VALUES(65,'before','same',NULL,NULL,NULL,NULL,'temperature_difference',' :name"<b>','',18.5,'dial','é<b>''; DROP TABLE entry; --‮''; DROP TABLE entry; --','''; DROP TABLE entry; --');
INSERT INTO fact_road_test VALUES(66,'before','same','force','z﻿','',4.4501477170144027669e-308,'frequency','''; DROP TABLE entry; --','<b>‮ä',0.10000000000000000555,'dial','?',replace('%1äz﻿=1+1\n','\n',char(10)));
CREATE TABLE IF NOT EXISTS "fact_recheck_due" (
  "entry" INTEGER PRIMARY KEY REFERENCES "entry" ("id"),
  "what" TEXT NOT NULL CHECK (instr("what", char(0)) = 0),
  "on" TEXT CHECK ("on" GLOB '[0-9][0-9][0-9][0-9]-[0-9][0-9]-[0-9][0-9]'),
  "at_odometer_kind" TEXT REFERENCES "quantity_kind" ("word"), "at_odometer_number" TEXT,
      "at_odometer_unit" TEXT,
  "at_odometer_si" REAL CHECK (abs("at_odometer_si") < 1e300),
  CHECK (("at_odometer_kind" IS NULL) + ("at_odometer_number" IS NULL) + ("at_odometer_unit" IS
      NULL) + ("at_odometer_si" IS NULL) IN (0, 4))
) STRICT;
INSERT INTO fact_recheck_due VALUES(67,' 🔧','2012-02-18',NULL,NULL,NULL,NULL);
INSERT INTO fact_recheck_due VALUES(68,'','2038-01-04',NULL,NULL,NULL,NULL);
CREATE TABLE IF NOT EXISTS "fact_job_closed" (
  "entry" INTEGER PRIMARY KEY REFERENCES "entry" ("id"),
  "outcome" TEXT NOT NULL CHECK ("outcome" IN ('signed_off', 'declined',
      'closed_without_sign_off')),
  "reason" TEXT NOT NULL CHECK (instr("reason", char(0)) = 0)
) STRICT;
INSERT INTO fact_job_closed VALUES(69,'closed_without_sign_off','"');
INSERT INTO fact_job_closed VALUES(70,'declined',replace('\n z﻿NULL','\n',char(10)));
CREATE TABLE IF NOT EXISTS "fact_withdrawal" (
  "entry" INTEGER PRIMARY KEY REFERENCES "entry" ("id"),
  "text" TEXT NOT NULL CHECK (instr("text", char(0)) = 0)
) STRICT;
INSERT INTO fact_withdrawal VALUES(71,' ‮"');
INSERT INTO fact_withdrawal VALUES(72,'');
CREATE TABLE IF NOT EXISTS "fact_shop_named" (
  "entry" INTEGER PRIMARY KEY REFERENCES "entry" ("id"),
  "name" TEXT NOT NULL CHECK (instr("name", char(0)) = 0)
) STRICT;
INSERT INTO fact_shop_named VALUES(73,'<b>NULL');
INSERT INTO fact_shop_named VALUES(74,' <b>ä');
CREATE TABLE IF NOT EXISTS "fact_recheck_done" (
  "entry" INTEGER PRIMARY KEY REFERENCES "entry" ("id"),
  "recheck" INTEGER NOT NULL REFERENCES "entry" ("id"),
  "result" TEXT NOT NULL CHECK (instr("result", char(0)) = 0)
) STRICT;
INSERT INTO fact_recheck_done VALUES(75,2,'');
INSERT INTO fact_recheck_done VALUES(76,2,'');
CREATE TABLE IF NOT EXISTS "fact_calculated" (
  "entry" INTEGER PRIMARY KEY REFERENCES "entry" ("id"),
  "calculation" TEXT NOT NULL CHECK (instr("calculation", char(0)) = 0),
  "input" TEXT NOT NULL CHECK (instr("input", char(0)) = 0),
  "answer" TEXT NOT NULL CHECK (instr("answer", char(0)) = 0),
  "remark" TEXT NOT NULL CHECK (instr("remark", char(0)) = 0)
) STRICT;
INSERT INTO fact_calculated VALUES(77,' ä🔧','','25.0ä','25.0 ');
INSERT INTO fact_calculated VALUES(78,'','','0','<b>\25.00');
CREATE TABLE IF NOT EXISTS "fact_shake_told" (
  "entry" INTEGER PRIMARY KEY REFERENCES "entry" ("id"),
  "feature" TEXT NOT NULL CHECK (instr("feature", char(0)) = 0),
  "answer" TEXT NOT NULL CHECK (instr("answer", char(0)) = 0)
) STRICT;
INSERT INTO fact_shake_told VALUES(79,'":name =1+1','''; DROP TABLE entry; --?');
INSERT INTO fact_shake_told VALUES(80,'25.0','');
CREATE TABLE IF NOT EXISTS "fact_learning_left_out" (
  "entry" INTEGER PRIMARY KEY REFERENCES "entry" ("id"),
  "why" TEXT NOT NULL CHECK (instr("why", char(0)) = 0)
) STRICT;
INSERT INTO fact_learning_left_out VALUES(81,'\');
INSERT INTO fact_learning_left_out VALUES(82,'\ 	');
CREATE TABLE IF NOT EXISTS "fact_cause_numbers" (
  "entry" INTEGER PRIMARY KEY REFERENCES "entry" ("id"),
  "numbers" TEXT NOT NULL CHECK (instr("numbers", char(0)) = 0)
) STRICT;
INSERT INTO fact_cause_numbers VALUES(83,'=1+1');
INSERT INTO fact_cause_numbers VALUES(84,'');
CREATE TABLE IF NOT EXISTS "fact_cause_put_right" (
  "entry" INTEGER PRIMARY KEY REFERENCES "entry" ("id"),
  "cause" TEXT NOT NULL CHECK (instr("cause", char(0)) = 0),
  "how" TEXT NOT NULL CHECK (instr("how", char(0)) = 0)
) STRICT;
INSERT INTO fact_cause_put_right VALUES(85,'é‮?','25.0');
INSERT INTO fact_cause_put_right VALUES(86,'%1z﻿','ä0	‮');
CREATE TABLE IF NOT EXISTS "fact_lesson" (
  "entry" INTEGER PRIMARY KEY REFERENCES "entry" ("id"),
  "causes" TEXT NOT NULL CHECK (instr("causes", char(0)) = 0),
  "answers" TEXT NOT NULL CHECK (instr("answers", char(0)) = 0)
) STRICT;
INSERT INTO fact_lesson VALUES(87,'25.0=1+1🔧?','25.0');
INSERT INTO fact_lesson VALUES(88,'',replace('25.0\n','\n',char(10)));
CREATE INDEX "entry_job" ON "entry" ("job");
CREATE INDEX "entry_kind_job" ON "entry" ("kind", "job");
CREATE INDEX "person_person" ON "fact_person" ("person");
CREATE INDEX "instrument_instrument" ON "fact_instrument" ("instrument");
CREATE INDEX "vehicle_vehicle" ON "fact_vehicle" ("vehicle");
CREATE INDEX "job_opened_vehicle" ON "fact_job_opened" ("vehicle");
CREATE TRIGGER "entry_replaces_kind" BEFORE INSERT ON "entry"
WHEN NEW."replaces" IS NOT NULL AND NEW."kind" <> 'withdrawal'
  AND NEW."kind" IS NOT (SELECT "kind" FROM "entry" WHERE "id" = NEW."replaces")
BEGIN
  SELECT RAISE(ABORT, 'store.replaces_other_kind');
END;
CREATE TRIGGER "entry_replaces_job" BEFORE INSERT ON "entry"
WHEN NEW."replaces" IS NOT NULL
  AND NEW."job" IS NOT (SELECT "job" FROM "entry" WHERE "id" = NEW."replaces")
BEGIN
  SELECT RAISE(ABORT, 'store.replaces_other_job');
END;
CREATE TRIGGER "fact_person_no_update" BEFORE UPDATE ON "fact_person"
BEGIN
  SELECT RAISE(ABORT, 'store.insert_only');
END;
CREATE TRIGGER "fact_person_no_delete" BEFORE DELETE ON "fact_person"
BEGIN
  SELECT RAISE(ABORT, 'store.insert_only');
END;
CREATE TRIGGER "fact_person_no_second" BEFORE INSERT ON "fact_person"
WHEN EXISTS (SELECT 1 FROM "fact_person" WHERE "entry" = NEW."entry")
BEGIN
  SELECT RAISE(ABORT, 'store.insert_only');
END;
CREATE TRIGGER "fact_person_right_kind" BEFORE INSERT ON "fact_person"
WHEN (SELECT "kind" FROM "entry" WHERE "id" = NEW."entry") IS NOT 'person'
BEGIN
  SELECT RAISE(ABORT, 'store.wrong_kind');
END;
CREATE TRIGGER "fact_instrument_no_update" BEFORE UPDATE ON "fact_instrument"
BEGIN
  SELECT RAISE(ABORT, 'store.insert_only');
END;
CREATE TRIGGER "fact_instrument_no_delete" BEFORE DELETE ON "fact_instrument"
BEGIN
  SELECT RAISE(ABORT, 'store.insert_only');
END;
CREATE TRIGGER "fact_instrument_no_second" BEFORE INSERT ON "fact_instrument"
WHEN EXISTS (SELECT 1 FROM "fact_instrument" WHERE "entry" = NEW."entry")
BEGIN
  SELECT RAISE(ABORT, 'store.insert_only');
END;
CREATE TRIGGER "fact_instrument_right_kind" BEFORE INSERT ON "fact_instrument"
WHEN (SELECT "kind" FROM "entry" WHERE "id" = NEW."entry") IS NOT 'instrument'
BEGIN
  SELECT RAISE(ABORT, 'store.wrong_kind');
END;
CREATE TRIGGER "fact_instrument_check_no_update" BEFORE UPDATE ON "fact_instrument_check"
BEGIN
  SELECT RAISE(ABORT, 'store.insert_only');
END;
CREATE TRIGGER "fact_instrument_check_no_delete" BEFORE DELETE ON "fact_instrument_check"
BEGIN
  SELECT RAISE(ABORT, 'store.insert_only');
END;
CREATE TRIGGER "fact_instrument_check_no_second" BEFORE INSERT ON "fact_instrument_check"
WHEN EXISTS (SELECT 1 FROM "fact_instrument_check" WHERE "entry" = NEW."entry")
BEGIN
  SELECT RAISE(ABORT, 'store.insert_only');
END;
CREATE TRIGGER "fact_instrument_check_right_kind" BEFORE INSERT ON "fact_instrument_check"
WHEN (SELECT "kind" FROM "entry" WHERE "id" = NEW."entry") IS NOT 'instrument_check'
BEGIN
  SELECT RAISE(ABORT, 'store.wrong_kind');
END;
CREATE TRIGGER "fact_vehicle_no_update" BEFORE UPDATE ON "fact_vehicle"
BEGIN
  SELECT RAISE(ABORT, 'store.insert_only');
END;
CREATE TRIGGER "fact_vehicle_no_delete" BEFORE DELETE ON "fact_vehicle"
BEGIN
  SELECT RAISE(ABORT, 'store.insert_only');
END;
CREATE TRIGGER "fact_vehicle_no_second" BEFORE INSERT ON "fact_vehicle"
WHEN EXISTS (SELECT 1 FROM "fact_vehicle" WHERE "entry" = NEW."entry")
BEGIN
  SELECT RAISE(ABORT, 'store.insert_only');
END;
CREATE TRIGGER "fact_vehicle_right_kind" BEFORE INSERT ON "fact_vehicle"
WHEN (SELECT "kind" FROM "entry" WHERE "id" = NEW."entry") IS NOT 'vehicle'
BEGIN
  SELECT RAISE(ABORT, 'store.wrong_kind');
END;
CREATE TRIGGER "fact_spec_item_no_update" BEFORE UPDATE ON "fact_spec_item"
BEGIN
  SELECT RAISE(ABORT, 'store.insert_only');
END;
CREATE TRIGGER "fact_spec_item_no_delete" BEFORE DELETE ON "fact_spec_item"
BEGIN
  SELECT RAISE(ABORT, 'store.insert_only');
END;
CREATE TRIGGER "fact_spec_item_no_second" BEFORE INSERT ON "fact_spec_item"
WHEN EXISTS (SELECT 1 FROM "fact_spec_item" WHERE "entry" = NEW."entry")
BEGIN
  SELECT RAISE(ABORT, 'store.insert_only');
END;
CREATE TRIGGER "fact_spec_item_right_kind" BEFORE INSERT ON "fact_spec_item"
WHEN (SELECT "kind" FROM "entry" WHERE "id" = NEW."entry") IS NOT 'spec_item'
BEGIN
  SELECT RAISE(ABORT, 'store.wrong_kind');
END;
CREATE TRIGGER "fact_procedure_text_no_update" BEFORE UPDATE ON "fact_procedure_text"
BEGIN
  SELECT RAISE(ABORT, 'store.insert_only');
END;
CREATE TRIGGER "fact_procedure_text_no_delete" BEFORE DELETE ON "fact_procedure_text"
BEGIN
  SELECT RAISE(ABORT, 'store.insert_only');
END;
CREATE TRIGGER "fact_procedure_text_no_second" BEFORE INSERT ON "fact_procedure_text"
WHEN EXISTS (SELECT 1 FROM "fact_procedure_text" WHERE "entry" = NEW."entry")
BEGIN
  SELECT RAISE(ABORT, 'store.insert_only');
END;
CREATE TRIGGER "fact_procedure_text_right_kind" BEFORE INSERT ON "fact_procedure_text"
WHEN (SELECT "kind" FROM "entry" WHERE "id" = NEW."entry") IS NOT 'procedure_text'
BEGIN
  SELECT RAISE(ABORT, 'store.wrong_kind');
END;
CREATE TRIGGER "fact_job_opened_no_update" BEFORE UPDATE ON "fact_job_opened"
BEGIN
  SELECT RAISE(ABORT, 'store.insert_only');
END;
CREATE TRIGGER "fact_job_opened_no_delete" BEFORE DELETE ON "fact_job_opened"
BEGIN
  SELECT RAISE(ABORT, 'store.insert_only');
END;
CREATE TRIGGER "fact_job_opened_no_second" BEFORE INSERT ON "fact_job_opened"
WHEN EXISTS (SELECT 1 FROM "fact_job_opened" WHERE "entry" = NEW."entry")
BEGIN
  SELECT RAISE(ABORT, 'store.insert_only');
END;
CREATE TRIGGER "fact_job_opened_right_kind" BEFORE INSERT ON "fact_job_opened"
WHEN (SELECT "kind" FROM "entry" WHERE "id" = NEW."entry") IS NOT 'job_opened'
BEGIN
  SELECT RAISE(ABORT, 'store.wrong_kind');
END;
CREATE TRIGGER "fact_complaint_no_update" BEFORE UPDATE ON "fact_complaint"
BEGIN
  SELECT RAISE(ABORT, 'store.insert_only');
END;
CREATE TRIGGER "fact_complaint_no_delete" BEFORE DELETE ON "fact_complaint"
BEGIN
  SELECT RAISE(ABORT, 'store.insert_only');
END;
CREATE TRIGGER "fact_complaint_no_second" BEFORE INSERT ON "fact_complaint"
WHEN EXISTS (SELECT 1 FROM "fact_complaint" WHERE "entry" = NEW."entry")
BEGIN
  SELECT RAISE(ABORT, 'store.insert_only');
END;
CREATE TRIGGER "fact_complaint_right_kind" BEFORE INSERT ON "fact_complaint"
WHEN (SELECT "kind" FROM "entry" WHERE "id" = NEW."entry") IS NOT 'complaint'
BEGIN
  SELECT RAISE(ABORT, 'store.wrong_kind');
END;
CREATE TRIGGER "fact_cause_checked_no_update" BEFORE UPDATE ON "fact_cause_checked"
BEGIN
  SELECT RAISE(ABORT, 'store.insert_only');
END;
CREATE TRIGGER "fact_cause_checked_no_delete" BEFORE DELETE ON "fact_cause_checked"
BEGIN
  SELECT RAISE(ABORT, 'store.insert_only');
END;
CREATE TRIGGER "fact_cause_checked_no_second" BEFORE INSERT ON "fact_cause_checked"
WHEN EXISTS (SELECT 1 FROM "fact_cause_checked" WHERE "entry" = NEW."entry")
BEGIN
  SELECT RAISE(ABORT, 'store.insert_only');
END;
CREATE TRIGGER "fact_cause_checked_right_kind" BEFORE INSERT ON "fact_cause_checked"
WHEN (SELECT "kind" FROM "entry" WHERE "id" = NEW."entry") IS NOT 'cause_checked'
BEGIN
  SELECT RAISE(ABORT, 'store.wrong_kind');
END;
CREATE TRIGGER "fact_run_started_no_update" BEFORE UPDATE ON "fact_run_started"
BEGIN
  SELECT RAISE(ABORT, 'store.insert_only');
END;
CREATE TRIGGER "fact_run_started_no_delete" BEFORE DELETE ON "fact_run_started"
BEGIN
  SELECT RAISE(ABORT, 'store.insert_only');
END;
CREATE TRIGGER "fact_run_started_no_second" BEFORE INSERT ON "fact_run_started"
WHEN EXISTS (SELECT 1 FROM "fact_run_started" WHERE "entry" = NEW."entry")
BEGIN
  SELECT RAISE(ABORT, 'store.insert_only');
END;
CREATE TRIGGER "fact_run_started_right_kind" BEFORE INSERT ON "fact_run_started"
WHEN (SELECT "kind" FROM "entry" WHERE "id" = NEW."entry") IS NOT 'run_started'
BEGIN
  SELECT RAISE(ABORT, 'store.wrong_kind');
END;
CREATE TRIGGER "fact_support_chosen_no_update" BEFORE UPDATE ON "fact_support_chosen"
BEGIN
  SELECT RAISE(ABORT, 'store.insert_only');
END;
CREATE TRIGGER "fact_support_chosen_no_delete" BEFORE DELETE ON "fact_support_chosen"
BEGIN
  SELECT RAISE(ABORT, 'store.insert_only');
END;
CREATE TRIGGER "fact_support_chosen_no_second" BEFORE INSERT ON "fact_support_chosen"
WHEN EXISTS (SELECT 1 FROM "fact_support_chosen" WHERE "entry" = NEW."entry")
BEGIN
  SELECT RAISE(ABORT, 'store.insert_only');
END;
CREATE TRIGGER "fact_support_chosen_right_kind" BEFORE INSERT ON "fact_support_chosen"
WHEN (SELECT "kind" FROM "entry" WHERE "id" = NEW."entry") IS NOT 'support_chosen'
BEGIN
  SELECT RAISE(ABORT, 'store.wrong_kind');
END;
CREATE TRIGGER "fact_hold_answer_no_update" BEFORE UPDATE ON "fact_hold_answer"
BEGIN
  SELECT RAISE(ABORT, 'store.insert_only');
END;
CREATE TRIGGER "fact_hold_answer_no_delete" BEFORE DELETE ON "fact_hold_answer"
BEGIN
  SELECT RAISE(ABORT, 'store.insert_only');
END;
CREATE TRIGGER "fact_hold_answer_no_second" BEFORE INSERT ON "fact_hold_answer"
WHEN EXISTS (SELECT 1 FROM "fact_hold_answer" WHERE "entry" = NEW."entry")
BEGIN
  SELECT RAISE(ABORT, 'store.insert_only');
END;
CREATE TRIGGER "fact_hold_answer_right_kind" BEFORE INSERT ON "fact_hold_answer"
WHEN (SELECT "kind" FROM "entry" WHERE "id" = NEW."entry") IS NOT 'hold_answer'
BEGIN
  SELECT RAISE(ABORT, 'store.wrong_kind');
END;
CREATE TRIGGER "fact_step_mark_no_update" BEFORE UPDATE ON "fact_step_mark"
BEGIN
  SELECT RAISE(ABORT, 'store.insert_only');
END;
CREATE TRIGGER "fact_step_mark_no_delete" BEFORE DELETE ON "fact_step_mark"
BEGIN
  SELECT RAISE(ABORT, 'store.insert_only');
END;
CREATE TRIGGER "fact_step_mark_no_second" BEFORE INSERT ON "fact_step_mark"
WHEN EXISTS (SELECT 1 FROM "fact_step_mark" WHERE "entry" = NEW."entry")
BEGIN
  SELECT RAISE(ABORT, 'store.insert_only');
END;
CREATE TRIGGER "fact_step_mark_right_kind" BEFORE INSERT ON "fact_step_mark"
WHEN (SELECT "kind" FROM "entry" WHERE "id" = NEW."entry") IS NOT 'step_mark'
BEGIN
  SELECT RAISE(ABORT, 'store.wrong_kind');
END;
CREATE TRIGGER "fact_observation_no_update" BEFORE UPDATE ON "fact_observation"
BEGIN
  SELECT RAISE(ABORT, 'store.insert_only');
END;
CREATE TRIGGER "fact_observation_no_delete" BEFORE DELETE ON "fact_observation"
BEGIN
  SELECT RAISE(ABORT, 'store.insert_only');
END;
CREATE TRIGGER "fact_observation_no_second" BEFORE INSERT ON "fact_observation"
WHEN EXISTS (SELECT 1 FROM "fact_observation" WHERE "entry" = NEW."entry")
BEGIN
  SELECT RAISE(ABORT, 'store.insert_only');
END;
CREATE TRIGGER "fact_observation_right_kind" BEFORE INSERT ON "fact_observation"
WHEN (SELECT "kind" FROM "entry" WHERE "id" = NEW."entry") IS NOT 'observation'
BEGIN
  SELECT RAISE(ABORT, 'store.wrong_kind');
END;
CREATE TRIGGER "fact_series_no_update" BEFORE UPDATE ON "fact_series"
BEGIN
  SELECT RAISE(ABORT, 'store.insert_only');
END;
CREATE TRIGGER "fact_series_no_delete" BEFORE DELETE ON "fact_series"
BEGIN
  SELECT RAISE(ABORT, 'store.insert_only');
END;
CREATE TRIGGER "fact_series_no_second" BEFORE INSERT ON "fact_series"
WHEN EXISTS (SELECT 1 FROM "fact_series" WHERE "entry" = NEW."entry")
BEGIN
  SELECT RAISE(ABORT, 'store.insert_only');
END;
CREATE TRIGGER "fact_series_right_kind" BEFORE INSERT ON "fact_series"
WHEN (SELECT "kind" FROM "entry" WHERE "id" = NEW."entry") IS NOT 'series'
BEGIN
  SELECT RAISE(ABORT, 'store.wrong_kind');
END;
CREATE TRIGGER "fact_reading_no_update" BEFORE UPDATE ON "fact_reading"
BEGIN
  SELECT RAISE(ABORT, 'store.insert_only');
END;
CREATE TRIGGER "fact_reading_no_delete" BEFORE DELETE ON "fact_reading"
BEGIN
  SELECT RAISE(ABORT, 'store.insert_only');
END;
CREATE TRIGGER "fact_reading_no_second" BEFORE INSERT ON "fact_reading"
WHEN EXISTS (SELECT 1 FROM "fact_reading" WHERE "entry" = NEW."entry")
BEGIN
  SELECT RAISE(ABORT, 'store.insert_only');
END;
CREATE TRIGGER "fact_reading_right_kind" BEFORE INSERT ON "fact_reading"
WHEN (SELECT "kind" FROM "entry" WHERE "id" = NEW."entry") IS NOT 'reading'
BEGIN
  SELECT RAISE(ABORT, 'store.wrong_kind');
END;
CREATE TRIGGER "fact_verdict_no_update" BEFORE UPDATE ON "fact_verdict"
BEGIN
  SELECT RAISE(ABORT, 'store.insert_only');
END;
CREATE TRIGGER "fact_verdict_no_delete" BEFORE DELETE ON "fact_verdict"
BEGIN
  SELECT RAISE(ABORT, 'store.insert_only');
END;
CREATE TRIGGER "fact_verdict_no_second" BEFORE INSERT ON "fact_verdict"
WHEN EXISTS (SELECT 1 FROM "fact_verdict" WHERE "entry" = NEW."entry")
BEGIN
  SELECT RAISE(ABORT, 'store.insert_only');
END;
CREATE TRIGGER "fact_verdict_right_kind" BEFORE INSERT ON "fact_verdict"
WHEN (SELECT "kind" FROM "entry" WHERE "id" = NEW."entry") IS NOT 'verdict'
BEGIN
  SELECT RAISE(ABORT, 'store.wrong_kind');
END;
CREATE TRIGGER "fact_torque_check_no_update" BEFORE UPDATE ON "fact_torque_check"
BEGIN
  SELECT RAISE(ABORT, 'store.insert_only');
END;
CREATE TRIGGER "fact_torque_check_no_delete" BEFORE DELETE ON "fact_torque_check"
BEGIN
  SELECT RAISE(ABORT, 'store.insert_only');
END;
CREATE TRIGGER "fact_torque_check_no_second" BEFORE INSERT ON "fact_torque_check"
WHEN EXISTS (SELECT 1 FROM "fact_torque_check" WHERE "entry" = NEW."entry")
BEGIN
  SELECT RAISE(ABORT, 'store.insert_only');
END;
CREATE TRIGGER "fact_torque_check_right_kind" BEFORE INSERT ON "fact_torque_check"
WHEN (SELECT "kind" FROM "entry" WHERE "id" = NEW."entry") IS NOT 'torque_check'
BEGIN
  SELECT RAISE(ABORT, 'store.wrong_kind');
END;
CREATE TRIGGER "fact_ledger_move_no_update" BEFORE UPDATE ON "fact_ledger_move"
BEGIN
  SELECT RAISE(ABORT, 'store.insert_only');
END;
CREATE TRIGGER "fact_ledger_move_no_delete" BEFORE DELETE ON "fact_ledger_move"
BEGIN
  SELECT RAISE(ABORT, 'store.insert_only');
END;
CREATE TRIGGER "fact_ledger_move_no_second" BEFORE INSERT ON "fact_ledger_move"
WHEN EXISTS (SELECT 1 FROM "fact_ledger_move" WHERE "entry" = NEW."entry")
BEGIN
  SELECT RAISE(ABORT, 'store.insert_only');
END;
CREATE TRIGGER "fact_ledger_move_right_kind" BEFORE INSERT ON "fact_ledger_move"
WHEN (SELECT "kind" FROM "entry" WHERE "id" = NEW."entry") IS NOT 'ledger_move'
BEGIN
  SELECT RAISE(ABORT, 'store.wrong_kind');
END;
CREATE TRIGGER "fact_part_used_no_update" BEFORE UPDATE ON "fact_part_used"
BEGIN
  SELECT RAISE(ABORT, 'store.insert_only');
END;
CREATE TRIGGER "fact_part_used_no_delete" BEFORE DELETE ON "fact_part_used"
BEGIN
  SELECT RAISE(ABORT, 'store.insert_only');
END;
CREATE TRIGGER "fact_part_used_no_second" BEFORE INSERT ON "fact_part_used"
WHEN EXISTS (SELECT 1 FROM "fact_part_used" WHERE "entry" = NEW."entry")
BEGIN
  SELECT RAISE(ABORT, 'store.insert_only');
END;
CREATE TRIGGER "fact_part_used_right_kind" BEFORE INSERT ON "fact_part_used"
WHEN (SELECT "kind" FROM "entry" WHERE "id" = NEW."entry") IS NOT 'part_used'
BEGIN
  SELECT RAISE(ABORT, 'store.wrong_kind');
END;
CREATE TRIGGER "fact_shim_pack_no_update" BEFORE UPDATE ON "fact_shim_pack"
BEGIN
  SELECT RAISE(ABORT, 'store.insert_only');
END;
CREATE TRIGGER "fact_shim_pack_no_delete" BEFORE DELETE ON "fact_shim_pack"
BEGIN
  SELECT RAISE(ABORT, 'store.insert_only');
END;
CREATE TRIGGER "fact_shim_pack_no_second" BEFORE INSERT ON "fact_shim_pack"
WHEN EXISTS (SELECT 1 FROM "fact_shim_pack" WHERE "entry" = NEW."entry")
BEGIN
  SELECT RAISE(ABORT, 'store.insert_only');
END;
CREATE TRIGGER "fact_shim_pack_right_kind" BEFORE INSERT ON "fact_shim_pack"
WHEN (SELECT "kind" FROM "entry" WHERE "id" = NEW."entry") IS NOT 'shim_pack'
BEGIN
  SELECT RAISE(ABORT, 'store.wrong_kind');
END;
CREATE TRIGGER "fact_labour_no_update" BEFORE UPDATE ON "fact_labour"
BEGIN
  SELECT RAISE(ABORT, 'store.insert_only');
END;
CREATE TRIGGER "fact_labour_no_delete" BEFORE DELETE ON "fact_labour"
BEGIN
  SELECT RAISE(ABORT, 'store.insert_only');
END;
CREATE TRIGGER "fact_labour_no_second" BEFORE INSERT ON "fact_labour"
WHEN EXISTS (SELECT 1 FROM "fact_labour" WHERE "entry" = NEW."entry")
BEGIN
  SELECT RAISE(ABORT, 'store.insert_only');
END;
CREATE TRIGGER "fact_labour_right_kind" BEFORE INSERT ON "fact_labour"
WHEN (SELECT "kind" FROM "entry" WHERE "id" = NEW."entry") IS NOT 'labour'
BEGIN
  SELECT RAISE(ABORT, 'store.wrong_kind');
END;
CREATE TRIGGER "fact_work_declined_no_update" BEFORE UPDATE ON "fact_work_declined"
BEGIN
  SELECT RAISE(ABORT, 'store.insert_only');
END;
CREATE TRIGGER "fact_work_declined_no_delete" BEFORE DELETE ON "fact_work_declined"
BEGIN
  SELECT RAISE(ABORT, 'store.insert_only');
END;
CREATE TRIGGER "fact_work_declined_no_second" BEFORE INSERT ON "fact_work_declined"
WHEN EXISTS (SELECT 1 FROM "fact_work_declined" WHERE "entry" = NEW."entry")
BEGIN
  SELECT RAISE(ABORT, 'store.insert_only');
END;
CREATE TRIGGER "fact_work_declined_right_kind" BEFORE INSERT ON "fact_work_declined"
WHEN (SELECT "kind" FROM "entry" WHERE "id" = NEW."entry") IS NOT 'work_declined'
BEGIN
  SELECT RAISE(ABORT, 'store.wrong_kind');
END;
CREATE TRIGGER "fact_note_no_update" BEFORE UPDATE ON "fact_note"
BEGIN
  SELECT RAISE(ABORT, 'store.insert_only');
END;
CREATE TRIGGER "fact_note_no_delete" BEFORE DELETE ON "fact_note"
BEGIN
  SELECT RAISE(ABORT, 'store.insert_only');
END;
CREATE TRIGGER "fact_note_no_second" BEFORE INSERT ON "fact_note"
WHEN EXISTS (SELECT 1 FROM "fact_note" WHERE "entry" = NEW."entry")
BEGIN
  SELECT RAISE(ABORT, 'store.insert_only');
END;
CREATE TRIGGER "fact_note_right_kind" BEFORE INSERT ON "fact_note"
WHEN (SELECT "kind" FROM "entry" WHERE "id" = NEW."entry") IS NOT 'note'
BEGIN
  SELECT RAISE(ABORT, 'store.wrong_kind');
END;
CREATE TRIGGER "fact_photo_no_update" BEFORE UPDATE ON "fact_photo"
BEGIN
  SELECT RAISE(ABORT, 'store.insert_only');
END;
CREATE TRIGGER "fact_photo_no_delete" BEFORE DELETE ON "fact_photo"
BEGIN
  SELECT RAISE(ABORT, 'store.insert_only');
END;
CREATE TRIGGER "fact_photo_no_second" BEFORE INSERT ON "fact_photo"
WHEN EXISTS (SELECT 1 FROM "fact_photo" WHERE "entry" = NEW."entry")
BEGIN
  SELECT RAISE(ABORT, 'store.insert_only');
END;
CREATE TRIGGER "fact_photo_right_kind" BEFORE INSERT ON "fact_photo"
WHEN (SELECT "kind" FROM "entry" WHERE "id" = NEW."entry") IS NOT 'photo'
BEGIN
  SELECT RAISE(ABORT, 'store.wrong_kind');
END;
CREATE TRIGGER "fact_timer_started_no_update" BEFORE UPDATE ON "fact_timer_started"
BEGIN
  SELECT RAISE(ABORT, 'store.insert_only');
END;
CREATE TRIGGER "fact_timer_started_no_delete" BEFORE DELETE ON "fact_timer_started"
BEGIN
  SELECT RAISE(ABORT, 'store.insert_only');
END;
CREATE TRIGGER "fact_timer_started_no_second" BEFORE INSERT ON "fact_timer_started"
WHEN EXISTS (SELECT 1 FROM "fact_timer_started" WHERE "entry" = NEW."entry")
BEGIN
  SELECT RAISE(ABORT, 'store.insert_only');
END;
CREATE TRIGGER "fact_timer_started_right_kind" BEFORE INSERT ON "fact_timer_started"
WHEN (SELECT "kind" FROM "entry" WHERE "id" = NEW."entry") IS NOT 'timer_started'
BEGIN
  SELECT RAISE(ABORT, 'store.wrong_kind');
END;
CREATE TRIGGER "fact_override_no_update" BEFORE UPDATE ON "fact_override"
BEGIN
  SELECT RAISE(ABORT, 'store.insert_only');
END;
CREATE TRIGGER "fact_override_no_delete" BEFORE DELETE ON "fact_override"
BEGIN
  SELECT RAISE(ABORT, 'store.insert_only');
END;
CREATE TRIGGER "fact_override_no_second" BEFORE INSERT ON "fact_override"
WHEN EXISTS (SELECT 1 FROM "fact_override" WHERE "entry" = NEW."entry")
BEGIN
  SELECT RAISE(ABORT, 'store.insert_only');
END;
CREATE TRIGGER "fact_override_right_kind" BEFORE INSERT ON "fact_override"
WHEN (SELECT "kind" FROM "entry" WHERE "id" = NEW."entry") IS NOT 'override'
BEGIN
  SELECT RAISE(ABORT, 'store.wrong_kind');
END;
CREATE TRIGGER "fact_road_test_no_update" BEFORE UPDATE ON "fact_road_test"
BEGIN
  SELECT RAISE(ABORT, 'store.insert_only');
END;
CREATE TRIGGER "fact_road_test_no_delete" BEFORE DELETE ON "fact_road_test"
BEGIN
  SELECT RAISE(ABORT, 'store.insert_only');
END;
CREATE TRIGGER "fact_road_test_no_second" BEFORE INSERT ON "fact_road_test"
WHEN EXISTS (SELECT 1 FROM "fact_road_test" WHERE "entry" = NEW."entry")
BEGIN
  SELECT RAISE(ABORT, 'store.insert_only');
END;
CREATE TRIGGER "fact_road_test_right_kind" BEFORE INSERT ON "fact_road_test"
WHEN (SELECT "kind" FROM "entry" WHERE "id" = NEW."entry") IS NOT 'road_test'
BEGIN
  SELECT RAISE(ABORT, 'store.wrong_kind');
END;
CREATE TRIGGER "fact_recheck_due_no_update" BEFORE UPDATE ON "fact_recheck_due"
BEGIN
  SELECT RAISE(ABORT, 'store.insert_only');
END;
CREATE TRIGGER "fact_recheck_due_no_delete" BEFORE DELETE ON "fact_recheck_due"
BEGIN
  SELECT RAISE(ABORT, 'store.insert_only');
END;
CREATE TRIGGER "fact_recheck_due_no_second" BEFORE INSERT ON "fact_recheck_due"
WHEN EXISTS (SELECT 1 FROM "fact_recheck_due" WHERE "entry" = NEW."entry")
BEGIN
  SELECT RAISE(ABORT, 'store.insert_only');
END;
CREATE TRIGGER "fact_recheck_due_right_kind" BEFORE INSERT ON "fact_recheck_due"
WHEN (SELECT "kind" FROM "entry" WHERE "id" = NEW."entry") IS NOT 'recheck_due'
BEGIN
  SELECT RAISE(ABORT, 'store.wrong_kind');
END;
CREATE TRIGGER "fact_job_closed_no_update" BEFORE UPDATE ON "fact_job_closed"
BEGIN
  SELECT RAISE(ABORT, 'store.insert_only');
END;
CREATE TRIGGER "fact_job_closed_no_delete" BEFORE DELETE ON "fact_job_closed"
BEGIN
  SELECT RAISE(ABORT, 'store.insert_only');
END;
CREATE TRIGGER "fact_job_closed_no_second" BEFORE INSERT ON "fact_job_closed"
WHEN EXISTS (SELECT 1 FROM "fact_job_closed" WHERE "entry" = NEW."entry")
BEGIN
  SELECT RAISE(ABORT, 'store.insert_only');
END;
CREATE TRIGGER "fact_job_closed_right_kind" BEFORE INSERT ON "fact_job_closed"
WHEN (SELECT "kind" FROM "entry" WHERE "id" = NEW."entry") IS NOT 'job_closed'
BEGIN
  SELECT RAISE(ABORT, 'store.wrong_kind');
END;
CREATE TRIGGER "fact_withdrawal_no_update" BEFORE UPDATE ON "fact_withdrawal"
BEGIN
  SELECT RAISE(ABORT, 'store.insert_only');
END;
CREATE TRIGGER "fact_withdrawal_no_delete" BEFORE DELETE ON "fact_withdrawal"
BEGIN
  SELECT RAISE(ABORT, 'store.insert_only');
END;
CREATE TRIGGER "fact_withdrawal_no_second" BEFORE INSERT ON "fact_withdrawal"
WHEN EXISTS (SELECT 1 FROM "fact_withdrawal" WHERE "entry" = NEW."entry")
BEGIN
  SELECT RAISE(ABORT, 'store.insert_only');
END;
CREATE TRIGGER "fact_withdrawal_right_kind" BEFORE INSERT ON "fact_withdrawal"
WHEN (SELECT "kind" FROM "entry" WHERE "id" = NEW."entry") IS NOT 'withdrawal'
BEGIN
  SELECT RAISE(ABORT, 'store.wrong_kind');
END;
CREATE TRIGGER "entry_no_update" BEFORE UPDATE ON "entry"
BEGIN
  SELECT RAISE(ABORT, 'store.insert_only');
END;
CREATE TRIGGER "entry_no_delete" BEFORE DELETE ON "entry"
BEGIN
  SELECT RAISE(ABORT, 'store.insert_only');
END;
CREATE TRIGGER "entry_no_second" BEFORE INSERT ON "entry"
WHEN EXISTS (SELECT 1 FROM "entry" WHERE "id" = NEW."id")
BEGIN
  SELECT RAISE(ABORT, 'store.insert_only');
END;
CREATE TRIGGER "picture_no_update" BEFORE UPDATE ON "picture"
BEGIN
  SELECT RAISE(ABORT, 'store.insert_only');
END;
CREATE TRIGGER "picture_no_delete" BEFORE DELETE ON "picture"
BEGIN
  SELECT RAISE(ABORT, 'store.insert_only');
END;
CREATE TRIGGER "picture_no_second" BEFORE INSERT ON "picture"
WHEN EXISTS (SELECT 1 FROM "picture" WHERE "hash" = NEW."hash")
BEGIN
  SELECT RAISE(ABORT, 'store.insert_only');
END;
CREATE TRIGGER "kind_no_update" BEFORE UPDATE ON "kind"
BEGIN
  SELECT RAISE(ABORT, 'store.insert_only');
END;
CREATE TRIGGER "kind_no_delete" BEFORE DELETE ON "kind"
BEGIN
  SELECT RAISE(ABORT, 'store.insert_only');
END;
CREATE TRIGGER "kind_no_second" BEFORE INSERT ON "kind"
WHEN EXISTS (SELECT 1 FROM "kind" WHERE "word" = NEW."word")
BEGIN
  SELECT RAISE(ABORT, 'store.insert_only');
END;
CREATE TRIGGER "quantity_kind_no_update" BEFORE UPDATE ON "quantity_kind"
BEGIN
  SELECT RAISE(ABORT, 'store.insert_only');
END;
CREATE TRIGGER "quantity_kind_no_delete" BEFORE DELETE ON "quantity_kind"
BEGIN
  SELECT RAISE(ABORT, 'store.insert_only');
END;
CREATE TRIGGER "quantity_kind_no_second" BEFORE INSERT ON "quantity_kind"
WHEN EXISTS (SELECT 1 FROM "quantity_kind" WHERE "word" = NEW."word")
BEGIN
  SELECT RAISE(ABORT, 'store.insert_only');
END;
CREATE TRIGGER "fact_shop_named_no_update" BEFORE UPDATE ON "fact_shop_named"
BEGIN
  SELECT RAISE(ABORT, 'store.insert_only');
END;
CREATE TRIGGER "fact_shop_named_no_delete" BEFORE DELETE ON "fact_shop_named"
BEGIN
  SELECT RAISE(ABORT, 'store.insert_only');
END;
CREATE TRIGGER "fact_shop_named_no_second" BEFORE INSERT ON "fact_shop_named"
WHEN EXISTS (SELECT 1 FROM "fact_shop_named" WHERE "entry" = NEW."entry")
BEGIN
  SELECT RAISE(ABORT, 'store.insert_only');
END;
CREATE TRIGGER "fact_shop_named_right_kind" BEFORE INSERT ON "fact_shop_named"
WHEN (SELECT "kind" FROM "entry" WHERE "id" = NEW."entry") IS NOT 'shop_named'
BEGIN
  SELECT RAISE(ABORT, 'store.wrong_kind');
END;
CREATE TRIGGER "fact_recheck_done_no_update" BEFORE UPDATE ON "fact_recheck_done"
BEGIN
  SELECT RAISE(ABORT, 'store.insert_only');
END;
CREATE TRIGGER "fact_recheck_done_no_delete" BEFORE DELETE ON "fact_recheck_done"
BEGIN
  SELECT RAISE(ABORT, 'store.insert_only');
END;
CREATE TRIGGER "fact_recheck_done_no_second" BEFORE INSERT ON "fact_recheck_done"
WHEN EXISTS (SELECT 1 FROM "fact_recheck_done" WHERE "entry" = NEW."entry")
BEGIN
  SELECT RAISE(ABORT, 'store.insert_only');
END;
CREATE TRIGGER "fact_recheck_done_right_kind" BEFORE INSERT ON "fact_recheck_done"
WHEN (SELECT "kind" FROM "entry" WHERE "id" = NEW."entry") IS NOT 'recheck_done'
BEGIN
  SELECT RAISE(ABORT, 'store.wrong_kind');
END;
CREATE TRIGGER "fact_calculated_no_update" BEFORE UPDATE ON "fact_calculated"
BEGIN
  SELECT RAISE(ABORT, 'store.insert_only');
END;
CREATE TRIGGER "fact_calculated_no_delete" BEFORE DELETE ON "fact_calculated"
BEGIN
  SELECT RAISE(ABORT, 'store.insert_only');
END;
CREATE TRIGGER "fact_calculated_no_second" BEFORE INSERT ON "fact_calculated"
WHEN EXISTS (SELECT 1 FROM "fact_calculated" WHERE "entry" = NEW."entry")
BEGIN
  SELECT RAISE(ABORT, 'store.insert_only');
END;
CREATE TRIGGER "fact_calculated_right_kind" BEFORE INSERT ON "fact_calculated"
WHEN (SELECT "kind" FROM "entry" WHERE "id" = NEW."entry") IS NOT 'calculated'
BEGIN
  SELECT RAISE(ABORT, 'store.wrong_kind');
END;
CREATE TRIGGER "fact_shake_told_no_update" BEFORE UPDATE ON "fact_shake_told"
BEGIN
  SELECT RAISE(ABORT, 'store.insert_only');
END;
CREATE TRIGGER "fact_shake_told_no_delete" BEFORE DELETE ON "fact_shake_told"
BEGIN
  SELECT RAISE(ABORT, 'store.insert_only');
END;
CREATE TRIGGER "fact_shake_told_no_second" BEFORE INSERT ON "fact_shake_told"
WHEN EXISTS (SELECT 1 FROM "fact_shake_told" WHERE "entry" = NEW."entry")
BEGIN
  SELECT RAISE(ABORT, 'store.insert_only');
END;
CREATE TRIGGER "fact_shake_told_right_kind" BEFORE INSERT ON "fact_shake_told"
WHEN (SELECT "kind" FROM "entry" WHERE "id" = NEW."entry") IS NOT 'shake_told'
BEGIN
  SELECT RAISE(ABORT, 'store.wrong_kind');
END;
CREATE TRIGGER "fact_learning_left_out_no_update" BEFORE UPDATE ON "fact_learning_left_out"
BEGIN
  SELECT RAISE(ABORT, 'store.insert_only');
END;
CREATE TRIGGER "fact_learning_left_out_no_delete" BEFORE DELETE ON "fact_learning_left_out"
BEGIN
  SELECT RAISE(ABORT, 'store.insert_only');
END;
CREATE TRIGGER "fact_learning_left_out_no_second" BEFORE INSERT ON "fact_learning_left_out"
WHEN EXISTS (SELECT 1 FROM "fact_learning_left_out" WHERE "entry" = NEW."entry")
BEGIN
  SELECT RAISE(ABORT, 'store.insert_only');
END;
CREATE TRIGGER "fact_learning_left_out_right_kind" BEFORE INSERT ON "fact_learning_left_out"
WHEN (SELECT "kind" FROM "entry" WHERE "id" = NEW."entry") IS NOT 'learning_left_out'
BEGIN
  SELECT RAISE(ABORT, 'store.wrong_kind');
END;
CREATE TRIGGER "fact_cause_numbers_no_update" BEFORE UPDATE ON "fact_cause_numbers"
BEGIN
  SELECT RAISE(ABORT, 'store.insert_only');
END;
CREATE TRIGGER "fact_cause_numbers_no_delete" BEFORE DELETE ON "fact_cause_numbers"
BEGIN
  SELECT RAISE(ABORT, 'store.insert_only');
END;
CREATE TRIGGER "fact_cause_numbers_no_second" BEFORE INSERT ON "fact_cause_numbers"
WHEN EXISTS (SELECT 1 FROM "fact_cause_numbers" WHERE "entry" = NEW."entry")
BEGIN
  SELECT RAISE(ABORT, 'store.insert_only');
END;
CREATE TRIGGER "fact_cause_numbers_right_kind" BEFORE INSERT ON "fact_cause_numbers"
WHEN (SELECT "kind" FROM "entry" WHERE "id" = NEW."entry") IS NOT 'cause_numbers'
BEGIN
  SELECT RAISE(ABORT, 'store.wrong_kind');
END;
CREATE TRIGGER "fact_cause_put_right_no_update" BEFORE UPDATE ON "fact_cause_put_right"
BEGIN
  SELECT RAISE(ABORT, 'store.insert_only');
END;
CREATE TRIGGER "fact_cause_put_right_no_delete" BEFORE DELETE ON "fact_cause_put_right"
BEGIN
  SELECT RAISE(ABORT, 'store.insert_only');
END;
CREATE TRIGGER "fact_cause_put_right_no_second" BEFORE INSERT ON "fact_cause_put_right"
WHEN EXISTS (SELECT 1 FROM "fact_cause_put_right" WHERE "entry" = NEW."entry")
BEGIN
  SELECT RAISE(ABORT, 'store.insert_only');
END;
CREATE TRIGGER "fact_cause_put_right_right_kind" BEFORE INSERT ON "fact_cause_put_right"
WHEN (SELECT "kind" FROM "entry" WHERE "id" = NEW."entry") IS NOT 'cause_put_right'
BEGIN
  SELECT RAISE(ABORT, 'store.wrong_kind');
END;
CREATE TRIGGER "fact_lesson_no_update" BEFORE UPDATE ON "fact_lesson"
BEGIN
  SELECT RAISE(ABORT, 'store.insert_only');
END;
CREATE TRIGGER "fact_lesson_no_delete" BEFORE DELETE ON "fact_lesson"
BEGIN
  SELECT RAISE(ABORT, 'store.insert_only');
END;
CREATE TRIGGER "fact_lesson_no_second" BEFORE INSERT ON "fact_lesson"
WHEN EXISTS (SELECT 1 FROM "fact_lesson" WHERE "entry" = NEW."entry")
BEGIN
  SELECT RAISE(ABORT, 'store.insert_only');
END;
CREATE TRIGGER "fact_lesson_right_kind" BEFORE INSERT ON "fact_lesson"
WHEN (SELECT "kind" FROM "entry" WHERE "id" = NEW."entry") IS NOT 'lesson'
BEGIN
  SELECT RAISE(ABORT, 'store.wrong_kind');
END;
COMMIT;
PRAGMA application_id = 1398232652;
PRAGMA user_version = 5;
